package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.Passage;
import java.util.List;

/** A page of passages, each with its label. */
abstract class PassagePage extends ScrollPage {
    private static final int INDENT = 11;

    protected abstract List<Passage> passages(Frame frame);

    @Override
    protected final Lines lines(Frame frame, int width) {
        Lines lines = new Lines(width);
        for (Passage passage : passages(frame)) {
            if (passage.text().isEmpty() && passage.label().isEmpty()) {
                lines.gap();
            } else if (passage.label().length() > INDENT - 2) {
                lines.add(passage.label() + ": " + passage.text(), Style.of(passage.tone()));
            } else {
                lines.add(passage.label(), INDENT, passage.text(), Style.of(passage.tone()));
            }
        }
        return lines;
    }
}
