package bywash.tui.screen;

import bywash.tui.view.DisplayUnits;
import bywash.tui.view.EntryForms;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.Reserves;
import java.util.List;

/** The reserve was filled with fresh water. */
final class BatchFillPage extends FormPage {
    BatchFillPage() {
        super("Batch filled", "The reserve was filled with fresh water");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Reserve", Reserves.ids(frame)).beside((now, filled) -> Reserves.now(now, filled.text(0))),
                Field.number("Volume", new DisplayUnits(frame.snapshot().site().units()).volumeUnit()));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return EntryForms.batchFill(frame, filled);
    }

    @Override
    protected int first() {
        return 1;
    }
}
