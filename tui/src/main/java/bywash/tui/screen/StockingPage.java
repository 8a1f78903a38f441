package bywash.tui.screen;

import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.site.Stocking;
import bywash.rules.text.Names;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.StockForms;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Whether there are fish, and the species to bring back. */
final class StockingPage extends FormPage {
    StockingPage() {
        super("Stocking", "With fish or without, and the species to bring back");
    }

    @Override
    protected List<Field> fields(Frame frame) {
        return List.of(
                Field.choice(
                                "Stocking",
                                Stream.of(Stocking.values()).map(Stocking::word).toList())
                        .beside((now, filled) ->
                                "now " + now.snapshot().stocking().word()),
                Field.choice("Species", SpeciesTable.ids(frame.snapshot().site()))
                        .said(Names::species),
                Field.text("When"));
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return StockForms.stocking(frame, filled);
    }

    @Override
    protected List<String> notes(Frame frame, Filled filled) {
        return List.of(
                "Species: the one that is there, or is to be brought back; its bands make the checklist on page f.");
    }

    @Override
    protected @Nullable String preset(Frame frame, int field) {
        SeasonStatus season = frame.snapshot().season();
        if (field == 1 && season != null && season.fishless() != null) {
            return season.fishless().species();
        }
        return field == 0 ? frame.snapshot().stocking().word() : null;
    }
}
