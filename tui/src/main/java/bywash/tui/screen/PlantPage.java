package bywash.tui.screen;

import bywash.rules.text.Names;
import bywash.tui.view.BedForms;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.StockUnits;
import java.util.List;

/** A crop planted on an area of a bed. */
final class PlantPage extends FormPage {
    PlantPage() {
        super("Bed planted", "A crop on an area of a bed");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Bed", BedForms.beds(frame)).beside((now, filled) -> BedForms.now(now, filled.text(0))),
                Field.choice("Crop", BedForms.crops()).said(Names::words),
                Field.number("Area", StockUnits.of(frame).areaUnit()),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return BedForms.plant(frame, filled);
    }
}
