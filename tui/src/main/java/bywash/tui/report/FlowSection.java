package bywash.tui.report;

import bywash.rules.chlorine.Litres;
import bywash.tui.account.FlowRun;
import bywash.tui.view.DisplayUnits;
import java.util.ArrayList;
import java.util.List;

/** Water that moved: declared, not declared, in and out, with its range. */
final class FlowSection implements Section {
    private static final String FILLING = "filling of the reserve";

    private final Span span;

    FlowSection(Span span) {
        this.span = span;
    }

    @Override
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading("Water in and out"));
        if (span.account().reckonedFrom() == null) {
            blocks.add(
                    new Block.Paragraph("The readings of this time are no longer kept, so its litres cannot be worked"
                            + " out anew; what the watch said then stands in the alarms' messages."));
            return blocks;
        }
        if (span.account().flows().isEmpty()) {
            blocks.add(new Block.Paragraph("No water was seen to move beyond noise and cycles."));
            return blocks;
        }
        blocks.add(new Block.Grid(sums()));
        blocks.add(new Block.Grid(runs(Times.LOCAL)));
        blocks.add(new Block.Paragraph("The range is two standard errors, as the alarm last had it."));
        return blocks;
    }

    @Override
    public List<Table> tables() {
        return List.of(sums(), runs(Times.FULL));
    }

    /** What came in that nobody had declared, in words; empty for nothing. */
    static String undeclared(Span span) {
        Sum in = new Sum();
        Sum out = new Sum();
        span.account().flows().stream().filter(f -> !f.declared()).forEach(f -> (f.in() ? in : out).add(f.litres()));
        String words = in.count == 0 ? "" : "Water in, not declared: " + in.words(span.units()) + ".";
        return out.count == 0 ? words : (words + " Water lost: " + out.words(span.units()) + ".").strip();
    }

    private static final class Sum {
        private int count;
        private double low;
        private double likely;
        private double high;

        void add(Litres l) {
            count++;
            low += l.lowL();
            likely += l.likelyL();
            high += l.highL();
        }

        String words(DisplayUnits units) {
            return units.volume(likely) + " (" + units.range(low, high) + ")";
        }
    }

    private Table sums() {
        Table.Builder table = new Table.Builder(
                        "water-moved", "vessel", "which", "times", "low L", "likely L", "high L")
                .numbers("times", "low L", "likely L", "high L");
        span.site().vessels().forEach(v -> {
            for (String which : List.of("declared in", "not declared in", FILLING, "out")) {
                Sum sum = new Sum();
                span.account().flows().stream()
                        .filter(f -> f.vessel().equals(v.id()) && which(f).equals(which))
                        .forEach(f -> sum.add(f.litres()));
                if (sum.count > 0) {
                    table.row(
                            v.id(),
                            which,
                            Cells.count(sum.count),
                            Cells.number(sum.low, 0),
                            Cells.number(sum.likely, 0),
                            Cells.number(sum.high, 0));
                }
            }
        });
        return table.build();
    }

    private String which(FlowRun f) {
        if (!f.in()) {
            return "out";
        }
        boolean reserve = span.site().isReserve(f.vessel());
        return reserve ? FILLING : f.declared() ? "declared in" : "not declared in";
    }

    private Table runs(Times times) {
        Table.Builder table = new Table.Builder(
                        "flows", "vessel", "which", "from", "until", "low L", "likely L", "high L", "source")
                .numbers("low L", "likely L", "high L");
        for (FlowRun f : span.account().flows()) {
            table.row(
                    f.vessel(),
                    which(f),
                    times.of(f.since(), span.zone()),
                    times.of(f.until(), span.zone()),
                    Cells.number(f.litres().lowL(), 0),
                    Cells.number(f.litres().likelyL(), 0),
                    Cells.number(f.litres().highL(), 0),
                    Cells.text(f.source()));
        }
        return table.build();
    }
}
