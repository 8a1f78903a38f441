package bywash.tui.screen;

import bywash.rules.text.Names;
import bywash.tui.view.BedForms;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.StockUnits;
import java.util.List;

/** What was cut or picked from a bed. */
final class CropHarvestPage extends FormPage {
    CropHarvestPage() {
        super("Crop harvested", "What was cut or picked from a bed");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Bed", BedForms.beds(frame)).beside((now, filled) -> BedForms.now(now, filled.text(0))),
                Field.choice("Crop", BedForms.crops()).said(Names::words),
                Field.number("Harvest", StockUnits.of(frame).massUnit()),
                Field.number("Cleared", StockUnits.of(frame).areaUnit()),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return BedForms.harvest(frame, filled);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        return List.of("Cleared: the area left bare; leave it open where the plants go on.");
    }
}
