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
    @Override
    public String title() {
        return "Fish weighed";
    }

    @Override
    public String purpose() {
        return "A sample or all of a cohort on the scales";
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Cohort", Cohorts.ids(frame)),
                Field.choice("Weighed", List.of(ScaleForms.SAMPLE, ScaleForms.ALL)),
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
    protected String hint(Frame frame, Filled filled, int field) {
        return switch (field) {
            case 0 -> Cohorts.now(frame, filled.text(0));
            case 1 -> Cohorts.weighed(frame, filled.text(0));
            default -> "";
        };
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        return List.of(ScaleForms.sums(frame, filled, 2));
    }
}
