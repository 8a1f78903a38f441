package bywash.tui.screen;

import bywash.tui.view.Words;
import java.util.ArrayList;
import java.util.List;

/** Text gathered line by line before it is known where it goes. */
public final class Lines {
    /** @param labelled how many characters at the start stand out */
    private record Line(String text, Style style, int labelled) {}

    private final int width;
    private final List<Line> lines = new ArrayList<>();

    public Lines(int width) {
        this.width = width;
    }

    public Lines add(String text, Style style) {
        for (String line : Words.wrap(text, width)) {
            lines.add(new Line(line, style, 0));
        }
        return this;
    }

    /** Text with a word before it; further lines are indented under the text. */
    public Lines add(String label, int indent, String text, Style style) {
        List<String> wrapped = Words.wrap(text, Math.max(8, width - indent));
        for (int i = 0; i < wrapped.size(); i++) {
            String start = i == 0 ? label : "";
            String pad = " ".repeat(Math.max(0, indent - start.length()));
            lines.add(new Line(start + pad + wrapped.get(i), style, start.length()));
        }
        return this;
    }

    /** An empty line. */
    public Lines gap() {
        lines.add(new Line("", Style.PLAIN, 0));
        return this;
    }

    /** A line across, with a word at its start. */
    public Lines heading(String text) {
        lines.add(new Line(text, Style.STRONG, 0));
        return this;
    }

    public int size() {
        return lines.size();
    }

    /** Draws as many as fit, and says where the rest is to be found; returns the row after them. */
    int drawFirst(Picture picture, int row, int rows, String more) {
        int count = Math.min(rows, lines.size());
        for (int i = 0; i < count; i++) {
            draw(picture, row + i, lines.get(i));
        }
        if (count < lines.size() && count > 0) {
            picture.putBefore(row + count - 1, width, " " + more, Style.STRONG);
        }
        return row + count;
    }

    /** Draws from a line on, with how many lie above and below at the right of the first and the last row. */
    void draw(Picture picture, int row, int from, int rows) {
        int count = Math.max(0, Math.min(rows, lines.size() - from));
        for (int i = 0; i < count; i++) {
            draw(picture, row + i, lines.get(from + i));
        }
        int below = lines.size() - from - count;
        if (from > 0 && count > 1) {
            picture.putBefore(row, width, " [" + from + " above]", Style.STRONG);
        }
        if (below > 0 && count > 0) {
            picture.putBefore(row + count - 1, width, " [" + below + " more]", Style.STRONG);
        }
    }

    private void draw(Picture picture, int row, Line line) {
        picture.put(row, 0, width, line.text(), line.style());
        if (line.labelled() > 0) {
            picture.put(row, 0, line.text().substring(0, line.labelled()), Style.STRONG);
        }
    }
}
