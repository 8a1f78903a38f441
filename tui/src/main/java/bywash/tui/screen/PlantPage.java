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
    @Override
    public String title() {
        return "Bed planted";
    }

    @Override
    public String purpose() {
        return "A crop on an area of a bed";
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Bed", BedForms.beds(frame)),
                Field.choice("Crop", BedForms.crops()).said(Names::words),
                Field.number("Area", StockUnits.of(frame).areaUnit()),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return BedForms.plant(frame, filled);
    }

    @Override
    protected String hint(Frame frame, Filled filled, int field) {
        return field == 0 ? BedForms.now(frame, filled.text(0)) : "";
    }
}
