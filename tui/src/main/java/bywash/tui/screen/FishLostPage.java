package bywash.tui.screen;

import bywash.tui.view.Cohorts;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.StockForms;
import java.util.List;

/** Fish that died or went missing. */
final class FishLostPage extends FormPage {
    FishLostPage() {
        super("Fish lost", "Fish that died or went missing");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Cohort", Cohorts.ids(frame)).beside((now, filled) -> Cohorts.now(now, filled.text(0))),
                Field.number("Lost", ""),
                Field.text("Cause"),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return StockForms.lost(frame, filled);
    }
}
