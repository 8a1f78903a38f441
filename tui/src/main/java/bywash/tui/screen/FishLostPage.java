package bywash.tui.screen;

import bywash.tui.view.Cohorts;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.StockForms;
import java.util.List;

/** Fish that died or went missing. */
final class FishLostPage extends FormPage {
    @Override
    public String title() {
        return "Fish lost";
    }

    @Override
    public String purpose() {
        return "Fish that died or went missing";
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Cohort", Cohorts.ids(frame)),
                Field.number("Lost", ""),
                Field.text("Cause"),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return StockForms.lost(frame, filled);
    }

    @Override
    protected String hint(Frame frame, Filled filled, int field) {
        return field == 0 ? Cohorts.now(frame, filled.text(0)) : "";
    }
}
