package bywash.tui.screen;

import bywash.tui.view.BalanceView;
import bywash.tui.view.Frame;
import bywash.tui.view.Passage;
import java.util.List;

/** The water balance of each vessel and of all together. */
final class BalancePage extends PassagePage {
    @Override
    public String title() {
        return "Water balance";
    }

    @Override
    public String purpose() {
        return "Litres held, changed, declared, unexplained; what is found";
    }

    @Override
    public Character letter() {
        return 'u';
    }

    @Override
    protected List<Passage> passages(Frame frame) {
        return BalanceView.from(frame);
    }
}
