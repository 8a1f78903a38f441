package bywash.tui.screen;

import bywash.tui.view.AlarmDetail;
import bywash.tui.view.OverviewView;
import java.util.Locale;

/** The strip under the top line: what is wrong, since when, how long is left, what to do now, and why. */
final class FirstThing {
    private static final int INDENT = 7;

    private FirstThing() {}

    static Lines lines(OverviewView view, int width) {
        Lines lines = new Lines(width);
        AlarmDetail first = view.first();
        if (first == null) {
            return lines.add(view.headline().text(), Style.of(view.headline().tone()));
        }
        String mark = first.line().mark();
        boolean over = mark.isEmpty();
        String what = over ? "Over, not yet acknowledged. It was: " + first.was() : mark + " " + first.what();
        lines.add(what, Style.of(first.line().tone()));
        lines.add("Since", INDENT, first.since() + ". Left: " + first.left() + ".", Style.PLAIN);
        String action = over ? "acknowledge it (a) once you know why it came" : String.join("; ", first.action());
        lines.add("DO NOW", INDENT, capital(action) + ".", Style.PLAIN);
        return lines.add("Why", INDENT, first.why(), Style.PLAIN);
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
