package bywash.tui.screen;

import bywash.rules.text.Names;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.PhForms;
import java.util.List;

/** Plans a way to another pH. */
final class PhPlanPage extends FormPage {
    PhPlanPage() {
        super("pH plan", "To another pH in dated steps, by a chemical or by waiting");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.number("Target pH", "").beside((now, filled) -> PhForms.now(now)),
                Field.choice("By", PhForms.means()).said(Names::words),
                Field.number("Strength", "%").beside((now, filled) -> PhForms.strengthHint(filled.text(1))));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return PhForms.plan(frame, filled);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        return PhForms.lines(frame, filled);
    }
}
