package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.Passage;
import bywash.tui.view.StockView;
import java.util.List;

/** The fish on record. */
final class StockPage extends PassagePage {
    @Override
    public String title() {
        return "Stock";
    }

    @Override
    public String purpose() {
        return "Fish: count, mass, growth, conversion, density, harvest";
    }

    @Override
    public Character letter() {
        return 's';
    }

    @Override
    protected List<Passage> passages(Frame frame) {
        return StockView.from(frame);
    }
}
