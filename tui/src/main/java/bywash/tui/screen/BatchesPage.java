package bywash.tui.screen;

import bywash.tui.view.BatchesView;
import bywash.tui.view.Frame;
import bywash.tui.view.Passage;
import java.util.List;

/** What stands in the reserves, and when it may go in. */
final class BatchesPage extends PassagePage {
    @Override
    public String title() {
        return "Batches";
    }

    @Override
    public String purpose() {
        return "Reserve water: residual, treatment, when it may go in";
    }

    @Override
    public Character letter() {
        return 'b';
    }

    @Override
    protected List<Passage> passages(Frame frame) {
        return BatchesView.from(frame);
    }
}
