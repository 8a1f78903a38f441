package bywash.tui.screen;

import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.ProbeForms;
import java.util.List;

/** What was done to a probe. */
final class ProbeCaredPage extends FormPage {
    ProbeCaredPage() {
        super("Probe cared for", "Cleaned, a new membrane, replaced");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Probe", ProbeForms.probes(frame))
                        .beside((now, filled) -> ProbeForms.cared(now, filled.text(0))),
                Field.choice("Done", ProbeForms.CARE),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return ProbeForms.care(frame, filled);
    }
}
