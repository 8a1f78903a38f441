package bywash.tui.screen;

import bywash.tui.view.FeedView;
import bywash.tui.view.Frame;
import bywash.tui.view.Passage;
import java.util.List;

/** Feed and what follows from it. */
final class NitrogenPage extends PassagePage {
    @Override
    public String title() {
        return "Feed and nitrogen";
    }

    @Override
    public String purpose() {
        return "Feed plan, nitrogen, bacteria without fish, pH plan";
    }

    @Override
    public Character letter() {
        return 'f';
    }

    @Override
    protected List<Passage> passages(Frame frame) {
        return FeedView.from(frame);
    }
}
