package bywash.tui.screen;

import bywash.tui.view.LogLine;
import bywash.tui.view.Words;
import java.util.List;

/** The latest alarms and entries, newest first. */
final class LogPane {
    private LogPane() {}

    static void draw(Picture picture, int row, int rows, List<LogLine> log, String title) {
        picture.heading(row, 0, picture.width(), title);
        if (log.isEmpty()) {
            picture.put(row + 1, 1, "none", Style.PLAIN);
        }
        int next = row + 1;
        int indent = LogLine.indent(log);
        for (LogLine line : log) {
            List<String> text = Words.wrap(line.text(), picture.width() - indent);
            if (next + text.size() > row + 1 + rows) {
                return;
            }
            picture.put(next, 0, line.mark(), Style.of(line.tone()));
            picture.put(next, 3, line.when(), Style.PLAIN);
            for (String part : text) {
                picture.put(next++, indent, part, Style.of(line.tone()));
            }
        }
    }
}
