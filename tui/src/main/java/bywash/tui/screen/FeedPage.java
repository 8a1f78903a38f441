package bywash.tui.screen;

import bywash.rules.event.Appetite;
import bywash.tui.view.Cohorts;
import bywash.tui.view.EntryForms;
import bywash.tui.view.FeedRecord;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.StockUnits;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Feed given, now or at another time. */
final class FeedPage extends FormPage {
    FeedPage() {
        super("Feed given", "To which fish, how much, when");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        List<String> appetites = new ArrayList<>(List.of(EntryForms.NOT_SAID));
        Stream.of(Appetite.values()).map(Appetite::word).forEach(appetites::add);
        List<String> who = new ArrayList<>(List.of(EntryForms.ALL_FISH));
        who.addAll(Cohorts.ids(frame));
        return List.of(
                Field.number("Feed", StockUnits.of(frame).massUnit()).beside((now, filled) -> FeedRecord.last(now)),
                Field.number("Protein", "%"),
                Field.choice("Appetite", appetites),
                Field.choice("Cohort", who),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return EntryForms.feed(frame, filled);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        return FeedRecord.plan(frame).isEmpty() ? List.of() : List.of(FeedRecord.plan(frame));
    }
}
