package bywash.tui.screen;

import bywash.tui.view.Words;
import java.util.ArrayList;
import java.util.List;

/** Text gathered line by line before it is known where it goes. */
final class Lines {
    /** @param labelled how many characters at the start stand out */
    record Line(String text, Style style, int labelled) {}

    private final int width;
    private final List<Line> lines = new ArrayList<>();

    Lines(int width) {
        this.width = width;
    }

    Lines add(String text, Style style) {
        for (String line : Words.wrap(text, width)) {
            lines.add(new Line(line, style, 0));
        }
        return this;
    }

    /** Text with a word before it; further lines are indented under the text. */
    Lines add(String label, int indent, String text, Style style) {
        List<String> wrapped = Words.wrap(text, Math.max(8, width - indent));
        for (int i = 0; i < wrapped.size(); i++) {
            String start = i == 0 ? label : "";
            String pad = " ".repeat(Math.max(0, indent - start.length()));
            lines.add(new Line(start + pad + wrapped.get(i), style, start.length()));
        }
        return this;
    }

    int size() {
        return lines.size();
    }

    int draw(Picture picture, int row, int column, int rows) {
        return draw(picture, row, column, rows, true);
    }

    /**
     * Draws as many as fit; returns the row after them.
     *
     * @param opens whether Enter shows the rest, which is then said where lines are left out
     */
    int draw(Picture picture, int row, int column, int rows, boolean opens) {
        int count = Math.min(rows, lines.size());
        for (int i = 0; i < count; i++) {
            Line line = lines.get(i);
            picture.put(row + i, column, width, line.text(), line.style());
            if (line.labelled() > 0) {
                picture.put(row + i, column, line.text().substring(0, line.labelled()), Style.STRONG);
            }
        }
        if (count < lines.size() && count > 0) {
            picture.putBefore(row + count - 1, column + width, opens ? " [Enter: more]" : " [more]", Style.STRONG);
        }
        return row + count;
    }
}
