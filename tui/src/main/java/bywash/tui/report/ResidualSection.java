package bywash.tui.report;

import bywash.rules.chlorine.ResidualEstimate;
import bywash.tui.account.ResidualPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The estimated chlorine residual of the system over time, against the acute criterion. */
final class ResidualSection implements Section {
    private final Span span;

    ResidualSection(Span span) {
        this.span = span;
    }

    @Override
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading("Chlorine residual of the system, estimated"));
        if (span.account().reckonedFrom() == null) {
            blocks.add(new Block.Paragraph("The readings of this time are no longer kept; no estimate can be made."));
            return blocks;
        }
        boolean some = span.account().residual().stream().anyMatch(p -> p.highUgL() >= 0.5);
        if (!some) {
            blocks.add(new Block.Paragraph("None: at no time was the high end of the estimate above 0.5 ug/L."));
            return blocks;
        }
        blocks.add(new Block.Paragraph(peak(span)));
        String plot = new TimePlot(span.account().from(), span.account().to(), span.zone())
                .limit(ResidualEstimate.ACUTE_UG_L)
                .of(span.account().residual().stream()
                        .map(p -> new TimePlot.Point(p.at(), p.lowUgL(), p.likelyUgL(), p.highUgL()))
                        .toList());
        blocks.add(new Block.Plot(
                "Likely residual (*) with its range (:), ug/L; the line is the acute criterion, 19 ug/L (US EPA 1985)",
                plot));
        return blocks;
    }

    /** The peak in words. */
    static String peak(Span span) {
        ResidualPoint top = span.account().peak();
        return top == null
                ? "No chlorine was likely in the system."
                : String.format(
                        Locale.ROOT,
                        "Chlorine in the system at most %.1f ug/L likely (%.1f to %.1f), at %s; acute criterion 19, chronic 11"
                                + " ug/L (US EPA 1985). An estimate is no test.",
                        top.likelyUgL(),
                        top.lowUgL(),
                        top.highUgL(),
                        span.local(top.at()));
    }

    @Override
    public List<Table> tables() {
        Table.Builder table = new Table.Builder("residual", "time", "low ug/L", "likely ug/L", "high ug/L")
                .numbers("low ug/L", "likely ug/L", "high ug/L");
        for (ResidualPoint p : span.account().residual()) {
            table.row(
                    Times.FULL.of(p.at(), span.zone()),
                    Cells.number(p.lowUgL(), 2),
                    Cells.number(p.likelyUgL(), 2),
                    Cells.number(p.highUgL(), 2));
        }
        return List.of(table.build());
    }
}
