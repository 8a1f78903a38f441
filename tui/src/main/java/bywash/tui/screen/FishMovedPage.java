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
    FishMovedPage() {
        super("Fish moved", "Fish to another vessel, another cohort, or away");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice("Cohort", Cohorts.ids(frame)).beside((now, filled) -> Cohorts.now(now, filled.text(0))),
                Field.number("Count", ""),
                Field.choice(
                                "To",
                                Stream.concat(Cohorts.tanks(frame).stream(), Stream.of(FishMove.AWAY))
                                        .toList())
                        .beside((now, filled) -> StockForms.density(now, filled.text(2))),
                Field.text("Into cohort"),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return StockForms.moved(frame, filled);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        return List.of("Into cohort: leave it open where all of the cohort move and it stays itself.");
    }
}
