package bywash.tui.screen;

import bywash.tui.view.AlarmLine;
import bywash.tui.view.OverviewView;
import bywash.tui.view.Words;
import java.util.List;

/** The alarms that are not normal, by incident, what followed indented; on a wide screen with their messages. */
final class AlarmsPane {
    private static final int ROOMY = 110;
    /** The date of a time on another day: where there is no room for both, the date alone. */
    private static final int DATE = "yyyy-MM-dd".length();

    private AlarmsPane() {}

    static int wanted(OverviewView view, int width) {
        int each = width >= ROOMY ? 3 : 1;
        return view.alarms().size() * each;
    }

    static void draw(Picture picture, int row, int column, int rows, OverviewView view, int chosen) {
        List<AlarmLine> alarms = view.alarms();
        int width = picture.width() - column;
        int each = picture.width() >= ROOMY && rows >= alarms.size() * 3 ? 3 : 1;
        int fits = Math.max(1, rows / each);
        int from = Math.max(0, Math.min(chosen - fits + 1, alarms.size() - fits));
        int to = Math.min(alarms.size(), from + fits);
        String place = alarms.size() > fits ? " " + (from + 1) + " to " + to + " of " + alarms.size() : "";
        String title = "ALARMS" + place + incidents(alarms.size(), view.incidents());
        picture.heading(row, column, width, title);
        if (alarms.isEmpty()) {
            picture.put(row + 1, column + 1, "none", Style.PLAIN);
        }
        int next = row + 1;
        for (int i = from; i < to; i++) {
            line(picture, next++, column, width, alarms.get(i), i == chosen);
            if (each > 1) {
                next = message(picture, next, column, width, alarms.get(i));
            }
        }
    }

    static void line(Picture picture, int row, int column, int width, AlarmLine alarm, boolean chosen) {
        Style style = chosen ? Style.SELECTED : Style.of(alarm.tone());
        String pointer = chosen ? String.valueOf(picture.glyphs().pointer()) : " ";
        String start = pointer
                + (alarm.follows() ? "  " : "")
                + alarm.mark()
                + " ".repeat(3 - alarm.mark().length())
                + alarm.name();
        String end = " " + alarm.state() + " " + alarm.since();
        if (start.length() + end.length() > width && alarm.since().length() > DATE) {
            end = " " + alarm.state() + " " + alarm.since().substring(0, DATE);
        }
        if (start.length() + end.length() > width) {
            end = " " + alarm.state();
        }
        picture.put(row, column, " ".repeat(width), style);
        picture.put(row, column, width - end.length(), start, style);
        picture.putBefore(row, column + width, end, style);
    }

    /** Said only where alarms stand together, or several incidents do. */
    private static String incidents(int alarms, int incidents) {
        return alarms < 2 ? "" : incidents == 1 ? "  one incident" : "  " + incidents + " incidents";
    }

    private static int message(Picture picture, int row, int column, int width, AlarmLine alarm) {
        int next = row;
        for (String text : Words.wrap(alarm.message(), width - 4)) {
            if (next < row + 2) {
                picture.put(next++, column + 4, text, Style.PLAIN);
            }
        }
        return next;
    }
}
