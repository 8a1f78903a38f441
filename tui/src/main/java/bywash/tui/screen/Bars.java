package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.HeadView;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The top and the bottom line, the same on every page. */
final class Bars {
    private static final int NARROW = 60;

    private Bars() {}

    static void head(Picture picture, Frame frame) {
        HeadView head = HeadView.from(frame);
        int width = picture.width();
        int room = width - head.alarms().length() - 1;
        picture.putBefore(0, width, head.alarms(), Style.of(head.alarmTone()));
        int column = 0;
        if (width < NARROW) {
            column = piece(picture, column, room, head.time(), Style.PLAIN);
            piece(picture, column, room, head.feedUp() ? head.site() : head.feed(), Style.of(head.feedTone()));
            return;
        }
        column = piece(picture, column, room, head.site(), Style.STRONG);
        column = piece(picture, column, room, head.time(), Style.PLAIN);
        column = piece(picture, column, room, head.feed(), Style.of(head.feedTone()));
        if (column + head.counts().length() <= room) {
            piece(picture, column, room, head.counts(), Style.PLAIN);
        }
    }

    private static int piece(Picture picture, int column, int room, String text, Style style) {
        picture.put(0, column, Math.max(0, room - column), text, style);
        return column + text.length() + 2;
    }

    static void keys(Picture picture, ScreenModel model) {
        int row = picture.height() - 1;
        int width = picture.width();
        if (model.acknowledging()) {
            picture.put(row, 0, width, "Ack:  " + line(model.keys(), width - 6), Style.SELECTED);
        } else if (!model.notice().isEmpty()) {
            picture.put(row, 0, width, model.notice(), Style.SELECTED);
        } else {
            picture.put(row, 0, width, line(model.keys(), width), Style.STRONG);
        }
    }

    /** The keys with a word; where the line is too long, the help stays and those before it go. */
    static String line(List<Binding> keys, int width) {
        List<Binding> shown =
                new ArrayList<>(keys.stream().filter(b -> !b.word().isEmpty()).toList());
        String line = join(shown);
        for (int i = shown.size() - 1; i > 0 && line.length() > width; i--) {
            if (!shown.get(i).word().equals("help")) {
                shown.remove(i);
                line = join(shown);
            }
        }
        return line;
    }

    private static String join(List<Binding> bindings) {
        return bindings.stream().map(Binding::shown).collect(Collectors.joining("   "));
    }
}
