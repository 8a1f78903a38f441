package bywash.tui.screen;

import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.text.Names;
import bywash.tui.view.Cohorts;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.StockForms;
import bywash.tui.view.StockUnits;
import java.util.List;

/** A new cohort, or more of one that is there. */
final class FishInPage extends FormPage {
    FishInPage() {
        super("Fish in", "A new cohort, or more fish of one that is there");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.text("Cohort").beside((now, filled) -> Cohorts.now(now, filled.text(0))),
                Field.choice("Species", SpeciesTable.ids(frame.snapshot().site()))
                        .said(Names::species),
                Field.number("Count", ""),
                Field.number("Mass of one", StockUnits.of(frame).massUnit()),
                Field.choice("Into", Cohorts.tanks(frame))
                        .beside((now, filled) -> StockForms.density(now, filled.text(4))),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return StockForms.fishIn(frame, filled);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        String there = String.join(", ", Cohorts.ids(frame));
        return List.of((there.isEmpty() ? "No cohort with fish yet." : "On record: " + there + ".")
                + " A new name begins a cohort; one that is there gets more fish.");
    }
}
