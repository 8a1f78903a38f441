package bywash.tui.report;

import bywash.tui.account.Gap;
import bywash.tui.view.Words;
import java.time.Duration;
import java.util.List;

/** When nothing could be seen: a gap is never a time without alarms. */
final class GapSection implements Section {
    private final Span span;

    GapSection(Span span) {
        this.span = span;
    }

    @Override
    public List<Block> blocks() {
        Table table = table(Times.LOCAL);
        if (table.rows().isEmpty()) {
            return List.of();
        }
        Duration all = span.account().gaps().stream()
                .map(g -> Duration.between(g.from(), g.to()))
                .reduce(Duration.ZERO, Duration::plus);
        return List.of(
                new Block.Heading("When nothing could be seen"),
                new Block.Grid(table),
                new Block.Paragraph("In all " + Words.span(all)
                        + " of this time. No alarm in a gap does not mean that all was well."));
    }

    @Override
    public List<Table> tables() {
        return List.of(table(Times.FULL));
    }

    private Table table(Times times) {
        Table.Builder table = new Table.Builder("gaps", "from", "to", "min", "what").numbers("min");
        for (Gap g : span.account().gaps()) {
            table.row(
                    times.of(g.from(), span.zone()),
                    times.of(g.to(), span.zone()),
                    Cells.number(Duration.between(g.from(), g.to()).toSeconds() / 60.0, 0),
                    g.what());
        }
        return table.build();
    }
}
