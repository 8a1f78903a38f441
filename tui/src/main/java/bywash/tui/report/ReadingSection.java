package bywash.tui.report;

import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.tui.account.Slice;
import java.util.ArrayList;
import java.util.List;

/** What the probes read over the span. */
final class ReadingSection implements Section {
    private final Span span;

    ReadingSection(Span span) {
        this.span = span;
    }

    @Override
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading("Readings"));
        Table table = summary();
        if (table.rows().isEmpty()) {
            blocks.add(new Block.Paragraph("No probe was read in this time."));
            return blocks;
        }
        blocks.add(new Block.Grid(table));
        for (Probe probe : span.site().probes()) {
            List<Slice> slices = span.account().readings().getOrDefault(probe.id(), List.of());
            if (slices.size() > 1 && probe.quantity() != Quantity.STATE) {
                blocks.add(new Block.Plot(
                        WaterSection.name(probe, span.units()),
                        new TimePlot(span.account().from(), span.account().to(), span.zone())
                                .decimals(WaterSection.decimals(probe.quantity()))
                                .of(slices.stream()
                                        .map(s -> point(probe.quantity(), s))
                                        .toList())));
            }
        }
        return blocks;
    }

    private TimePlot.Point point(Quantity quantity, Slice s) {
        return new TimePlot.Point(
                s.from(),
                span.units().shown(quantity, s.low()),
                span.units().shown(quantity, s.mean()),
                span.units().shown(quantity, s.high()));
    }

    @Override
    public List<Table> tables() {
        Table.Builder table = new Table.Builder(
                        "readings-over-time", "from", "probe", "quantity", "unit", "readings", "low", "mean", "high")
                .numbers("readings", "low", "mean", "high");
        for (Probe probe : span.site().probes()) {
            for (Slice s : span.account().readings().getOrDefault(probe.id(), List.of())) {
                table.row(
                        Times.FULL.of(s.from(), span.zone()),
                        probe.id(),
                        probe.quantity().word(),
                        probe.quantity().unit(),
                        Cells.count(s.count()),
                        Cells.number(s.low(), 3),
                        Cells.number(s.mean(), 3),
                        Cells.number(s.high(), 3));
            }
        }
        return List.of(summary(), table.build());
    }

    private Table summary() {
        Table.Builder table = new Table.Builder(
                        "readings",
                        "probe",
                        "quantity",
                        "unit",
                        "readings",
                        "first",
                        "lowest",
                        "mean",
                        "highest",
                        "last")
                .numbers("readings", "first", "lowest", "mean", "highest", "last");
        for (Probe probe : span.site().probes()) {
            List<Slice> slices = span.account().readings().getOrDefault(probe.id(), List.of());
            if (!slices.isEmpty()) {
                int decimals = WaterSection.decimals(probe.quantity());
                long count = slices.stream().mapToLong(Slice::count).sum();
                double sum =
                        slices.stream().mapToDouble(s -> s.mean() * s.count()).sum();
                table.row(
                        probe.id(),
                        probe.quantity().word(),
                        probe.quantity().unit(),
                        Cells.count(count),
                        Cells.number(slices.get(0).mean(), decimals),
                        Cells.number(
                                slices.stream().mapToDouble(Slice::low).min().orElse(Double.NaN), decimals),
                        Cells.number(sum / count, decimals),
                        Cells.number(
                                slices.stream().mapToDouble(Slice::high).max().orElse(Double.NaN), decimals),
                        Cells.number(slices.get(slices.size() - 1).mean(), decimals));
            }
        }
        return table.build();
    }
}
