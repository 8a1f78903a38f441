package bywash.tui.report;

import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.daily.DayValue;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.VesselRole;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Plot;
import bywash.tui.view.DisplayUnits;
import bywash.tui.view.TestKind;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The water as the probes read it, and as it was tested. */
final class WaterSection {
    private final SeasonData data;

    WaterSection(SeasonData data) {
        this.data = data;
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Heading("Water"));
        blocks.add(new Grid(summary()));
        data.days().forEach((id, days) -> {
            Probe probe = data.site().probe(id).orElseThrow();
            List<TextPlot.Point> points = days.stream()
                    .map(d -> new TextPlot.Point(d.day(), units().shown(probe.quantity(), d.mean())))
                    .toList();
            blocks.add(new Plot(
                    "Daily mean of " + name(probe, units()),
                    TextPlot.of(points, data.firstDay(), data.lastDay(), decimals(probe.quantity()))));
        });
        blocks.add(new Heading("Tests"));
        blocks.add(new Grid(tests()));
        List<TextPlot.Point> nitrate = data.tests().stream()
                .filter(t -> t.quantity().equals("nitrate") && inLoop(t))
                .map(t -> new TextPlot.Point(data.day(t.at()), t.value()))
                .toList();
        if (nitrate.size() > 1) {
            blocks.add(new Plot("Nitrate by test, mg/L", TextPlot.of(nitrate, data.firstDay(), data.lastDay(), 0)));
        }
        return blocks;
    }

    private boolean inLoop(WaterTest test) {
        return data.site()
                .vessel(test.vessel())
                .map(v -> v.role() != VesselRole.RESERVE)
                .orElse(false);
    }

    private DisplayUnits units() {
        return new DisplayUnits(data.site().units());
    }

    /** A probe in words, with its unit. */
    static String name(Probe probe, DisplayUnits units) {
        String unit = units.unit(probe.quantity());
        return said(probe.quantity()) + " in " + probe.vessel() + " (" + probe.id()
                + (unit.isEmpty() ? "" : ", " + unit) + ")";
    }

    /** As growers say it. */
    private static String said(Quantity quantity) {
        return switch (quantity) {
            case PH -> "pH";
            case ORP -> "oxidation potential";
            case DISSOLVED_OXYGEN -> "dissolved oxygen";
            case LEVEL, TEMPERATURE, CONDUCTIVITY, FLOW, STATE -> quantity.word();
        };
    }

    static int decimals(Quantity quantity) {
        return switch (quantity) {
            case PH -> 2;
            case TEMPERATURE, DISSOLVED_OXYGEN, FLOW -> 1;
            case LEVEL, ORP, CONDUCTIVITY, STATE -> 0;
        };
    }

    private Table summary() {
        Table.Builder table = new Table.Builder(
                "water", "probe", "quantity", "unit", "days", "days without a reading", "lowest", "mean", "highest");
        long all = ChronoUnit.DAYS.between(data.firstDay(), data.lastDay()) + 1;
        data.days().forEach((id, days) -> {
            Quantity quantity = data.site().probe(id).orElseThrow().quantity();
            int decimals = decimals(quantity);
            table.row(
                    id,
                    said(quantity),
                    quantity.unit(),
                    Cells.count(days.size()),
                    Cells.count(Math.max(0, all - days.size())),
                    Cells.number(days.stream().mapToDouble(DayValue::low).min().orElse(Double.NaN), decimals),
                    Cells.number(
                            days.stream().mapToDouble(DayValue::mean).average().orElse(Double.NaN), decimals),
                    Cells.number(days.stream().mapToDouble(DayValue::high).max().orElse(Double.NaN), decimals));
        });
        return table.build();
    }

    private Table tests() {
        Map<String, List<WaterTest>> byKind = new TreeMap<>();
        data.tests()
                .forEach(t -> byKind.computeIfAbsent(t.vessel() + " " + t.quantity(), k -> new ArrayList<>())
                        .add(t));
        Table.Builder table = new Table.Builder(
                "tests", "vessel", "quantity", "tests", "lowest", "mean", "highest", "last", "last on");
        for (List<WaterTest> tests : byKind.values()) {
            WaterTest last = tests.get(tests.size() - 1);
            table.row(
                    Cells.text(last.vessel()),
                    Cells.text(TestKind.label(last.quantity())),
                    Cells.count(tests.size()),
                    Cells.number(
                            tests.stream().mapToDouble(WaterTest::value).min().orElse(Double.NaN), 2),
                    Cells.number(
                            tests.stream()
                                    .mapToDouble(WaterTest::value)
                                    .average()
                                    .orElse(Double.NaN),
                            2),
                    Cells.number(
                            tests.stream().mapToDouble(WaterTest::value).max().orElse(Double.NaN), 2),
                    Cells.number(last.value(), 2),
                    data.day(last.at()).toString());
        }
        return table.build();
    }

    /** Each day of each probe, for the CSV alone. */
    Table daily() {
        Table.Builder table =
                new Table.Builder("water-days", "day", "probe", "quantity", "unit", "readings", "low", "mean", "high");
        data.days().forEach((id, days) -> {
            Quantity quantity = data.site().probe(id).orElseThrow().quantity();
            for (DayValue d : days) {
                table.row(
                        d.day().toString(),
                        id,
                        quantity.word(),
                        quantity.unit(),
                        Cells.count(d.count()),
                        Cells.number(d.low(), 3),
                        Cells.number(d.mean(), 3),
                        Cells.number(d.high(), 3));
            }
        });
        return table.build();
    }
}
