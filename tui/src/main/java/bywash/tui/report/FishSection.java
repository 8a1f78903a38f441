package bywash.tui.report;

import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.GrowthPeriod;
import bywash.rules.husbandry.stock.HarvestRecord;
import bywash.rules.husbandry.stock.MassStatistics;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.husbandry.stock.Weighing;
import bywash.rules.site.Need;
import bywash.rules.text.Names;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Paragraph;
import bywash.tui.report.Block.Plot;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The cohorts: growth, conversion, survival, density and harvest. */
final class FishSection {
    private final SeasonData data;
    private final List<CohortStatus> cohorts;

    FishSection(SeasonData data) {
        this.data = data;
        this.cohorts = data.status().cohorts();
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Heading("Fish"));
        if (cohorts.isEmpty()) {
            blocks.add(new Paragraph("No fish on record."));
            return blocks;
        }
        blocks.add(new Grid(stock()));
        for (CohortStatus c : cohorts) {
            if (c.count() > 0) {
                blocks.add(new Paragraph(String.format(
                        Locale.ROOT,
                        "%s now: %.0f g a fish (%.0f to %.0f): %s.%s",
                        Cells.text(c.id()),
                        c.mean().likelyG(),
                        c.mean().lowG(),
                        c.mean().highG(),
                        c.mean().evidence(),
                        c.density() == null
                                ? ""
                                : " Density " + c.density().words() + " ("
                                        + c.density().source() + ").")));
            }
        }
        blocks.add(new Grid(needs()));
        blocks.add(new Heading("Growth"));
        blocks.add(new Grid(growth()));
        for (CohortStatus c : cohorts) {
            List<TextPlot.Point> points = c.weighings().stream()
                    .map(w -> new TextPlot.Point(data.day(w.at()), data.mass(w.meanG())))
                    .toList();
            if (points.size() > 1) {
                blocks.add(new Plot(
                        "Mean mass of " + Cells.text(c.id()) + " as weighed, " + data.massUnit(),
                        TextPlot.of(points, data.firstDay(), data.lastDay(), 0)));
            }
        }
        harvest(blocks);
        return blocks;
    }

    private Table stock() {
        Table.Builder table = new Table.Builder(
                "stock",
                "cohort",
                "species",
                "since",
                "stocked",
                "lost",
                "moved out",
                "harvested",
                "now",
                "survival %",
                "feed kg",
                "conversion",
                "with the dead");
        for (CohortStatus c : cohorts) {
            table.row(
                    Cells.text(c.id()),
                    Cells.text(Names.species(c.species())),
                    data.day(c.since()).toString(),
                    Cells.count(c.stocked()),
                    Cells.count(c.lost()),
                    Cells.count(c.movedOut()),
                    Cells.count(c.harvested()),
                    Cells.count(c.count()),
                    Cells.number(c.survivalPercent(), 1),
                    Cells.number(c.feedG() / 1000, 2),
                    Cells.number(c.whole().economic(), 2),
                    Cells.number(c.whole().biological(), 2));
        }
        return table.build();
    }

    /** What the species that were here need, with the source of each figure. */
    private Table needs() {
        Table.Builder table = new Table.Builder("species", "species", "need", "low", "high", "unit", "source");
        cohorts.stream()
                .map(CohortStatus::species)
                .distinct()
                .forEach(id -> SpeciesTable.find(data.site(), id)
                        .ifPresent(species -> species.bands()
                                .forEach(b -> table.row(
                                        id,
                                        b.need() == Need.PH
                                                ? "pH"
                                                : b.need().word().replace('-', ' '),
                                        Cells.number(
                                                b.band().low(),
                                                decimals(b.band().low())),
                                        Cells.number(
                                                b.band().high(),
                                                decimals(b.band().high())),
                                        b.need().unit(),
                                        Cells.text(b.source())))));
        return table.build();
    }

    private static int decimals(double value) {
        return value == Math.rint(value) ? 0 : value * 10 == Math.rint(value * 10) ? 1 : 2;
    }

    private Table growth() {
        Table.Builder table = new Table.Builder(
                "growth",
                "cohort",
                "from",
                "to",
                "days",
                "from g",
                "to g",
                "specific growth %/d",
                "half width",
                "thermal coefficient",
                "feed kg",
                "conversion");
        for (CohortStatus c : cohorts) {
            for (GrowthPeriod p : c.periods()) {
                table.row(
                        Cells.text(c.id()),
                        data.day(p.from()).toString(),
                        data.day(p.to()).toString(),
                        Cells.number(p.growth().days(), 0),
                        Cells.number(p.growth().fromG(), 1),
                        Cells.number(p.growth().toG(), 1),
                        Cells.number(p.growth().specificPercentPerDay(), 2),
                        Cells.number(p.halfWidthPercentPerDay(), 2),
                        Cells.number(p.growth().thermalCoefficient(), 2),
                        Cells.number(p.conversion().feedG() / 1000, 2),
                        Cells.number(p.conversion().economic(), 2));
            }
        }
        return table.build();
    }

    private void harvest(List<Block> blocks) {
        blocks.add(new Heading("Harvest"));
        Table.Builder table = new Table.Builder(
                "harvest",
                "cohort",
                "on",
                "fish",
                "total kg",
                "mean g",
                "weighed",
                "spread of these g",
                "smallest g",
                "largest g");
        for (CohortStatus c : cohorts) {
            for (HarvestRecord h : c.harvests()) {
                harvestRow(table, Cells.text(c.id()), data.day(h.at()).toString(), h);
            }
        }
        Table built = table.build();
        if (built.rows().isEmpty()) {
            blocks.add(new Paragraph("Nothing harvested."));
            return;
        }
        blocks.add(new Grid(built));
        List<Double> masses =
                cohorts.stream().flatMap(c -> c.harvestMassesG().stream()).toList();
        if (masses.size() > 4) {
            MassStatistics all = MassStatistics.of(masses);
            blocks.add(new Paragraph(String.format(
                    Locale.ROOT,
                    "%d fish weighed one by one: %.2f kg, mean %.0f g, median %.0f g, spread %.0f g (%.0f %%), %.0f to %.0f g.",
                    all.count(),
                    all.totalG() / 1000,
                    all.meanG(),
                    all.medianG(),
                    all.spreadG(),
                    all.variationPercent(),
                    all.smallestG(),
                    all.largestG())));
            blocks.add(new Plot("Masses at harvest", histogram(masses)));
        }
    }

    private String histogram(List<Double> massesG) {
        List<Double> shown = massesG.stream().map(data::mass).toList();
        return TextPlot.histogram(shown, data.massUnit().equals("g") ? 50 : 2, data.massUnit());
    }

    private static void harvestRow(Table.Builder table, String cohort, String on, HarvestRecord h) {
        boolean some = !h.massesG().isEmpty();
        MassStatistics s = some ? MassStatistics.of(h.massesG()) : null;
        table.row(
                cohort,
                on,
                Cells.count(h.count()),
                Cells.number(h.totalG() / 1000, 2),
                Cells.number(h.totalG() / h.count(), 0),
                Cells.count(h.massesG().size()),
                s == null ? "" : Cells.number(s.spreadG(), 0),
                s == null ? "" : Cells.number(s.smallestG(), 0),
                s == null ? "" : Cells.number(s.largestG(), 0));
    }

    /** Each weighing, for the CSV alone. */
    Table weighings() {
        Table.Builder table =
                new Table.Builder("weighings", "cohort", "at", "weighed", "of", "mean g", "half width g", "total g");
        for (CohortStatus c : cohorts) {
            for (Weighing w : c.weighings()) {
                table.row(
                        Cells.text(c.id()),
                        data.when(w.at()),
                        Cells.count(w.counted()),
                        Cells.count(w.cohortCount()),
                        Cells.number(w.meanG(), 1),
                        Cells.number(w.halfWidthG(), 1),
                        Cells.number(w.totalG(), 1));
            }
        }
        return table.build();
    }

    /** Each fish weighed at harvest, for the CSV alone. */
    Table fish() {
        Table.Builder table = new Table.Builder("harvest-fish", "cohort", "at", "mass g");
        for (CohortStatus c : cohorts) {
            for (HarvestRecord h : c.harvests()) {
                h.massesG().forEach(m -> table.row(Cells.text(c.id()), data.when(h.at()), Cells.number(m, 1)));
            }
        }
        return table.build();
    }
}
