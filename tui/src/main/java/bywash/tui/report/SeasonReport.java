package bywash.tui.report;

import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.HarvestRecord;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Paragraph;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The whole report: its blocks, and the tables of its CSV files. */
public final class SeasonReport implements Report {
    private final SeasonData data;
    private final List<Block> blocks = new ArrayList<>();

    public SeasonReport(SeasonData data) {
        this.data = data;
        blocks.add(new Paragraph(glance()));
        blocks.addAll(new WaterSection(data).blocks());
        blocks.addAll(new PhSection(data).blocks());
        blocks.addAll(new SeasonFlowSection(data).blocks());
        blocks.addAll(new IncidentSection(data).blocks());
        blocks.addAll(new FishlessSection(data).blocks());
        blocks.addAll(new FishSection(data).blocks());
        blocks.addAll(new FeedSection(data).blocks());
        blocks.addAll(new PlantSection(data).blocks());
        blocks.addAll(new ProbeSection(data).blocks());
        if (!data.status().remarks().isEmpty()) {
            blocks.add(new Heading("Entries that could not be booked"));
            data.status().remarks().forEach(r -> blocks.add(new Paragraph(Cells.text(r))));
        }
        withdrawn();
        blocks.add(new Heading("Cautions"));
        blocks.add(
                new Paragraph(
                        "Estimates are no test. Masses between weighings, nitrogen taken by plants and oxygen used are reckoned, with"
                                + " the ranges given. Fish welfare and slaughter, food safety and discharge follow local rules and licensed practice."));
    }

    /** Both stay on record: what was taken back, and that it was. */
    private void withdrawn() {
        if (data.withdrawn().isEmpty()) {
            return;
        }
        blocks.add(new Heading("Entries taken back"));
        Table.Builder table = new Table.Builder("taken-back", "taken back on", "entry", "of", "why");
        for (Withdraw w : data.withdrawn()) {
            table.row(data.when(w.at()), w.of(), data.when(w.entered()), Cells.text(w.why()));
        }
        blocks.add(new Grid(table.build()));
    }

    @Override
    public String title() {
        return "Season of " + Cells.text(data.site().name());
    }

    @Override
    public Map<String, String> head() {
        Map<String, String> head = new LinkedHashMap<>();
        head.put("report", "season");
        head.put("site", data.site().id());
        head.put("from", Times.FULL.of(data.from(), data.site().timeZone()));
        head.put("to", Times.FULL.of(data.to(), data.site().timeZone()));
        return head;
    }

    @Override
    public List<Block> blocks() {
        return blocks.stream().map(b -> UsTables.of(b, data.site().units())).toList();
    }

    /** Every table of the report, and those too long for it. */
    @Override
    public List<Table> tables() {
        List<Table> tables = new ArrayList<>();
        for (Block block : blocks) {
            if (block instanceof Grid grid) {
                tables.add(grid.table());
            }
        }
        FishSection fish = new FishSection(data);
        tables.add(new WaterSection(data).daily());
        tables.add(new SeasonFlowSection(data).all());
        tables.add(new FeedSection(data).daily());
        tables.add(fish.weighings());
        tables.add(fish.fish());
        tables.add(tests());
        return tables.stream().map(t -> UsTables.of(t, data.site().units())).toList();
    }

    private Table tests() {
        Table.Builder table = new Table.Builder("tests-all", "at", "vessel", "quantity", "value");
        for (WaterTest t : data.tests()) {
            table.row(data.when(t.at()), Cells.text(t.vessel()), Cells.text(t.quantity()), Cells.number(t.value(), 3));
        }
        return table.build();
    }

    private String glance() {
        long days = ChronoUnit.DAYS.between(data.firstDay(), data.lastDay()) + 1;
        int stocked = 0;
        int lost = 0;
        int harvested = 0;
        double harvestG = 0;
        for (CohortStatus c : data.status().cohorts()) {
            stocked += c.stocked();
            lost += c.lost();
            harvested += c.harvests().stream().mapToInt(HarvestRecord::count).sum();
            harvestG += c.harvestG();
        }
        double crops =
                data.status().beds().stream().mapToDouble(b -> b.harvestedG()).sum();
        return String.format(
                        Locale.ROOT,
                        "%s to %s, %d %s. %d fish stocked, %d lost, %d harvested with %.1f kg, on %.1f kg of feed; %.1f kg of crops; %d manual tests.",
                        data.firstDay(),
                        data.lastDay(),
                        days,
                        days == 1 ? "day" : "days",
                        stocked,
                        lost,
                        harvested,
                        harvestG / 1000,
                        data.status().feed().totalG() / 1000,
                        crops / 1000,
                        data.tests().size())
                + new SeasonFlowSection(data).glance();
    }
}
