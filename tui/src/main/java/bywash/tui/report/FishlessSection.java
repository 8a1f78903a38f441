package bywash.tui.report;

import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.husbandry.bacteria.CheckItem;
import bywash.rules.husbandry.season.FishlessStatus;
import bywash.rules.site.Stocking;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Paragraph;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Times without fish, and the way back where there are none at the end; nothing where there always were fish. */
final class FishlessSection {
    private final SeasonData data;

    FishlessSection(SeasonData data) {
        this.data = data;
    }

    List<Block> blocks() {
        Table spans = spans();
        List<Block> blocks = new ArrayList<>();
        FishlessStatus fishless = data.status().fishless();
        if (spans.rows().isEmpty() && fishless == null) {
            return blocks;
        }
        blocks.add(new Heading("Without fish"));
        if (!spans.rows().isEmpty()) {
            blocks.add(new Grid(spans));
        }
        if (fishless != null) {
            blocks.add(new Paragraph("The bacteria: " + fishless.plan().words()));
            Table.Builder table = new Table.Builder("way-back", "before fish come back", "need", "present", "holds");
            for (CheckItem item : fishless.checklist()) {
                table.row(
                        item.what(), item.need(), item.present(), item.answer().word());
            }
            blocks.add(new Grid(table.build()));
        }
        return blocks;
    }

    private Table spans() {
        Table.Builder table = new Table.Builder("without-fish", "from", "to", "days");
        Stocking now = data.site().stocking();
        @Nullable LocalDate since = now == Stocking.FISHLESS ? data.firstDay() : null;
        for (StockingChange change : data.entries().stream()
                .filter(StockingChange.class::isInstance)
                .map(StockingChange.class::cast)
                .toList()) {
            if (change.stocking() == Stocking.FISHLESS && since == null) {
                since = data.day(change.at());
            } else if (change.stocking() == Stocking.FISH && since != null) {
                row(table, since, data.day(change.at()), data.day(change.at()).toString());
                since = null;
            }
        }
        if (since != null) {
            row(table, since, data.lastDay(), "still");
        }
        return table.build();
    }

    private static void row(Table.Builder table, LocalDate from, LocalDate to, String until) {
        table.row(from.toString(), until, Cells.count(ChronoUnit.DAYS.between(from, to)));
    }
}
