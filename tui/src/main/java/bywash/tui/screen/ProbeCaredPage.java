package bywash.tui.screen;

import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.ProbeForms;
import java.util.List;

/** What was done to a probe. */
final class ProbeCaredPage extends FormPage {
    @Override
    public String title() {
        return "Probe cared for";
    }

    @Override
    public String purpose() {
        return "Cleaned, a new membrane, replaced";
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Probe", ProbeForms.probes(frame)),
                Field.choice("Done", ProbeForms.CARE),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return ProbeForms.care(frame, filled);
    }

    @Override
    protected String hint(Frame frame, Filled filled, int field) {
        return field == 0 ? ProbeForms.cared(frame, filled.text(0)) : "";
    }
}
