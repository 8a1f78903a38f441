package bywash.tui.screen;

import bywash.tui.view.Cohorts;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.ScaleForms;
import bywash.tui.view.StockUnits;
import java.util.List;

/** Fish on the scales. */
final class WeighPage extends FormPage {
    WeighPage() {
        super("Fish weighed", "A sample or all of a cohort on the scales");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Cohort", Cohorts.ids(frame)).beside((now, filled) -> Cohorts.now(now, filled.text(0))),
                Field.choice("Weighed", List.of(ScaleForms.SAMPLE, ScaleForms.ALL))
                        .beside((now, filled) -> Cohorts.weighed(now, filled.text(0))),
                Field.list("Weights", StockUnits.of(frame).massUnit()),
                Field.number("or count", ""),
                Field.number("with total", StockUnits.of(frame).massUnit()),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return ScaleForms.weigh(frame, filled);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        return List.of(ScaleForms.sums(frame, filled, 2));
    }
}
