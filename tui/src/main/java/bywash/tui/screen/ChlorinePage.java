package bywash.tui.screen;

import bywash.tui.view.ChlorineText;
import bywash.tui.view.Frame;
import bywash.tui.view.Passage;
import java.util.List;

/** The chlorine estimate with its evidence, also where the overview has no room for it. */
final class ChlorinePage extends PassagePage {
    @Override
    public String title() {
        return "Chlorine";
    }

    @Override
    public String purpose() {
        return "The estimate against the criteria, with its evidence";
    }

    @Override
    public Character letter() {
        return 'x';
    }

    @Override
    protected List<Passage> passages(Frame frame) {
        return ChlorineText.from(frame);
    }
}
