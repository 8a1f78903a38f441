package bywash.tui.screen;

import bywash.tui.view.BedForms;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import java.util.List;

/** A bed taken out of the loop, or put back. */
final class BedStatePage extends FormPage {
    BedStatePage() {
        super("Bed off or on", "A bed taken out of the loop, or put back");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Bed", BedForms.beds(frame)).beside((now, filled) -> BedForms.now(now, filled.text(0))),
                Field.choice("Is", List.of(BedForms.OFF, BedForms.ON)),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return BedForms.state(frame, filled);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        String without = BedForms.without(frame, filled.text(0));
        return without.isEmpty() ? List.of() : List.of(without);
    }
}
