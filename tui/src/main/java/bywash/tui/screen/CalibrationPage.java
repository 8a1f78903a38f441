package bywash.tui.screen;

import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.ProbeForms;
import java.util.List;

/** A probe held into standards. */
final class CalibrationPage extends FormPage {
    CalibrationPage() {
        super("Calibration", "A probe held into standards, before it was adjusted");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Probe", ProbeForms.probes(frame))
                        .beside((now, filled) -> ProbeForms.last(now, filled.text(0))),
                Field.choice("Readings in", List.of("its own unit", ProbeForms.MILLIVOLT)),
                Field.signed("Standard 1", "").beside((now, filled) -> ProbeForms.unit(now, filled.text(0))),
                Field.signed("Reading 1", "").beside(CalibrationPage::readIn),
                Field.signed("Standard 2", ""),
                Field.signed("Reading 2", ""),
                Field.signed("Standard 3", ""),
                Field.signed("Reading 3", ""),
                Field.number("Temperature", "C"),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return ProbeForms.calibrate(frame, filled);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        String result = ProbeForms.result(frame, filled);
        return result.isEmpty() ? List.of() : List.of(result);
    }

    private static String readIn(Frame frame, Filled filled) {
        return filled.text(1).equals(ProbeForms.MILLIVOLT) ? filled.text(1) : ProbeForms.unit(frame, filled.text(0));
    }
}
