package bywash.tui.screen;

import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.ProbeForms;
import java.util.List;

/** A probe held into standards. */
final class CalibrationPage extends FormPage {
    @Override
    public String title() {
        return "Calibration";
    }

    @Override
    public String purpose() {
        return "A probe held into standards, before it was adjusted";
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Probe", ProbeForms.probes(frame)),
                Field.choice("Readings in", List.of("its own unit", ProbeForms.MILLIVOLT)),
                Field.signed("Standard 1", ""),
                Field.signed("Reading 1", ""),
                Field.signed("Standard 2", ""),
                Field.signed("Reading 2", ""),
                Field.signed("Standard 3", ""),
                Field.signed("Reading 3", ""),
                Field.number("Temperature", "Cel"),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return ProbeForms.calibrate(frame, filled);
    }

    @Override
    protected String hint(Frame frame, Filled filled, int field) {
        return switch (field) {
            case 0 -> ProbeForms.last(frame, filled.text(0));
            case 2 -> ProbeForms.unit(frame, filled.text(0));
            case 3 ->
                filled.text(1).equals(ProbeForms.MILLIVOLT) ? filled.text(1) : ProbeForms.unit(frame, filled.text(0));
            default -> "";
        };
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        String result = ProbeForms.result(frame, filled);
        return result.isEmpty() ? List.of() : List.of(result);
    }
}
