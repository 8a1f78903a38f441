package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.Passage;
import bywash.tui.view.RecoveryText;
import java.util.List;

/** The way back after an incident: tests due, feed, bacteria; and what would prevent the next. */
final class RecoveryPage extends PassagePage {
    @Override
    public String title() {
        return "Way back";
    }

    @Override
    public String purpose() {
        return "After an incident: tests due, feed, bacteria, prevention";
    }

    @Override
    public Character letter() {
        return 'w';
    }

    @Override
    protected List<Passage> passages(Frame frame) {
        return RecoveryText.from(frame);
    }
}
