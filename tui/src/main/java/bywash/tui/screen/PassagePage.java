package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.Passage;
import java.util.List;

/** A page of passages, each with its label. */
abstract class PassagePage extends ScrollPage {
    private static final int LEAST_INDENT = 11;
    private static final int MOST_INDENT = 17;

    protected abstract List<Passage> passages(Frame frame);

    @Override
    protected final Lines lines(Frame frame, int width) {
        Lines lines = new Lines(width);
        List<Passage> passages = passages(frame);
        int indent = indent(passages);
        for (Passage passage : passages) {
            Style style = Style.of(passage.tone());
            if (passage.text().isEmpty() && passage.label().isEmpty()) {
                lines.gap();
            } else if (passage.label().length() > indent - 1) {
                lines.add(passage.label(), style).add("", indent, passage.text(), style);
            } else {
                lines.add(passage.label(), indent, passage.text(), style);
            }
        }
        return lines;
    }

    /** All text of a page begins in one column, wide enough for its labels; a longer one gets a line of its own. */
    private static int indent(List<Passage> passages) {
        int longest = passages.stream().mapToInt(p -> p.label().length()).max().orElse(0);
        return Math.max(LEAST_INDENT, Math.min(MOST_INDENT, longest + 1));
    }
}
