package bywash.tui.screen;

import bywash.tui.view.Words;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Text gathered line by line before it is known where it goes. */
public final class Lines {
    /** @param labelled how many characters at the start stand out */
    private record Line(
            String text,
            Style style,
            int labelled,
            @Nullable Bar bar) {
        Line(String text, Style style, int labelled) {
            this(text, style, labelled, null);
        }

        /** Without the words that do not fit whole. */
        Line shortened(int room) {
            int end = text.length() <= room ? text.length() : text.lastIndexOf(' ', Math.max(0, room));
            return new Line(text.substring(0, Math.max(labelled, end)), style, labelled, bar);
        }
    }

    /** Drawn when the glyphs are known. */
    private record Bar(double share, String words) {}

    private static final int BAR_LABEL = 8;
    private static final int BAR_CELLS = 20;

    private final int width;
    private final List<Line> lines = new ArrayList<>();
    private boolean goesOn;

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

    /**
     * A field of a form: label, what stands in it, and a hint behind it; both begin in columns of their own. Where there is no
     * room for that the hint comes nearer, then goes under it.
     */
    Lines field(String label, int[] columns, String content, String hint, boolean chosen) {
        int indent = columns[0];
        String start = label + " ".repeat(Math.max(1, indent - label.length()));
        int spare = width - start.length() - content.length() - hint.length();
        int gap = Math.max(2, Math.min(columns[1] - indent - content.length(), spare));
        boolean beside = !hint.isEmpty() && gap <= spare;
        String end = beside ? " ".repeat(gap) + hint : "";
        lines.add(new Line(start + content + end, chosen ? Style.SELECTED : Style.PLAIN, label.length()));
        if (!hint.isEmpty() && !beside) {
            add("", indent, hint, Style.PLAIN);
        }
        return this;
    }

    /** Text as it is, not wrapped. */
    Lines raw(String text, Style style) {
        lines.add(new Line(text, style, 0));
        return this;
    }

    /** A share as a bar between a label and words. */
    Lines bar(String label, double share, String words) {
        lines.add(new Line(label, Style.PLAIN, label.length(), new Bar(share, words)));
        return this;
    }

    /** There are more lines than were gathered. */
    Lines goesOn() {
        goesOn = true;
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
        boolean cut = count < lines.size();
        for (int i = 0; i < count; i++) {
            Line line = lines.get(i);
            draw(picture, row + i, cut && i == count - 1 ? line.shortened(width - more.length() - 1) : line);
        }
        if (cut && count > 0) {
            picture.putBefore(row + count - 1, width, " " + more, Style.STRONG);
        }
        return row + count;
    }

    /** Draws from a line on, as many as fit under a heading; how many lie above and below stands in the heading's end. */
    void drawUnder(Picture picture, int heading, int from, int rows) {
        int count = Math.max(0, Math.min(rows, lines.size() - from));
        for (int i = 0; i < count; i++) {
            draw(picture, heading + 1 + i, lines.get(from + i));
        }
        int below = lines.size() - from - count;
        String above = from > 0 ? from + " above" : "";
        String more = below > 0 ? below + (goesOn ? "+ below" : " below") : "";
        String place = above + (above.isEmpty() || more.isEmpty() ? "" : ", ") + more;
        if (!place.isEmpty()) {
            picture.putBefore(heading, width, " " + place, Style.STRONG);
        }
    }

    private void draw(Picture picture, int row, Line line) {
        picture.put(row, 0, width, line.text(), line.style());
        if (line.labelled() > 0) {
            picture.put(row, 0, line.text().substring(0, line.labelled()), Style.STRONG);
        }
        Bar bar = line.bar();
        if (bar != null) {
            String cells = "[" + picture.glyphs().bar(bar.share(), BAR_CELLS) + "] " + bar.words();
            picture.put(row, BAR_LABEL, width - BAR_LABEL, cells, line.style());
        }
    }
}
