package bywash.tui.screen;

import bywash.tui.view.Cohorts;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.ScaleForms;
import bywash.tui.view.StockUnits;
import java.util.List;

/** Fish taken out to eat or to sell. */
final class HarvestPage extends FormPage {
    HarvestPage() {
        super("Fish harvested", "Fish taken out, weighed one by one or together");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Cohort", Cohorts.ids(frame)).beside((now, filled) -> Cohorts.now(now, filled.text(0))),
                Field.list("Weights", StockUnits.of(frame).massUnit()),
                Field.number("or count", ""),
                Field.number("with total", StockUnits.of(frame).massUnit()),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return ScaleForms.harvest(frame, filled);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        return List.of(
                ScaleForms.sums(frame, filled, 1),
                "Welfare and slaughter, and food safety, follow local rules and licensed practice.");
    }
}
