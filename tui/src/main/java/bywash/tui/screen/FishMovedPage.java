package bywash.tui.screen;

import bywash.rules.event.OperatorEntry.FishMove;
import bywash.tui.view.Cohorts;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.StockForms;
import java.util.List;
import java.util.stream.Stream;

/** Fish that go to another vessel or away. */
final class FishMovedPage extends FormPage {
    @Override
    public String title() {
        return "Fish moved";
    }

    @Override
    public String purpose() {
        return "Fish to another vessel, another cohort, or away";
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Cohort", Cohorts.ids(frame)),
                Field.number("Count", ""),
                Field.choice(
                        "To",
                        Stream.concat(Cohorts.tanks(frame).stream(), Stream.of(FishMove.AWAY))
                                .toList()),
                Field.text("Into cohort"),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return StockForms.moved(frame, filled);
    }

    @Override
    protected String hint(Frame frame, Filled filled, int field) {
        return switch (field) {
            case 0 -> Cohorts.now(frame, filled.text(0));
            case 2 -> StockForms.density(frame, filled.text(2));
            default -> "";
        };
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        return List.of("Into cohort: leave it open where all of the cohort move and it stays itself.");
    }
}
