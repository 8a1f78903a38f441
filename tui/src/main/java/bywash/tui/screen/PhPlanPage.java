package bywash.tui.screen;

import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.PhForms;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Plans a way to another pH. */
final class PhPlanPage extends FormPage {
    @Override
    public String title() {
        return "pH plan";
    }

    @Override
    public String purpose() {
        return "To another pH in dated steps, by a chemical or by waiting";
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.number("Target pH", ""), Field.choice("By", PhForms.means()), Field.number("Strength", "%"));
    }

    @Override
    protected @Nullable String preset(Frame frame, int field) {
        return field == 2 ? "100" : null;
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return PhForms.plan(frame, filled);
    }

    @Override
    protected String hint(Frame frame, Filled filled, int field) {
        return field == 0 ? PhForms.now(frame) : field == 2 ? "of the product, from its label" : "";
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        return PhForms.lines(frame, filled);
    }
}
