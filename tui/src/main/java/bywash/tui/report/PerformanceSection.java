package bywash.tui.report;

import bywash.rules.alarm.AlarmFigure;
import bywash.rules.alarm.AlarmPerformance;
import bywash.rules.alarm.AlarmRates;
import bywash.rules.alarm.AlarmRationale;
import java.util.ArrayList;
import java.util.List;

/** How well the alarms served: rates against EEMUA 191 and ISA-18.2, and how soon they were answered. */
final class PerformanceSection implements Section {
    private final Span span;
    private final AlarmPerformance performance;

    PerformanceSection(Span span) {
        this.span = span;
        this.performance = AlarmPerformance.of(
                span.account().history(), span.account().from(), span.account().to());
    }

    @Override
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading("How well the alarms served"));
        blocks.add(new Block.Grid(figures()));
        blocks.add(new Block.Paragraph("The marks were made for a plant with an operator at a desk; for one who sleeps,"
                + " fewer are better still. Most alarms here are critical or high by design: they call a grower out,"
                + " so the usual shares of priorities (5, 15 and 80 %) are no mark."));
        Table answers = answers();
        if (!answers.rows().isEmpty()) {
            blocks.add(new Block.Heading("How soon they were answered"));
            blocks.add(new Block.Grid(answers));
        }
        Table most = most();
        if (!most.rows().isEmpty()) {
            blocks.add(new Block.Heading("Raised most often"));
            blocks.add(new Block.Grid(most));
        }
        return blocks;
    }

    @Override
    public List<Table> tables() {
        return List.of(figures(), answers(), most(), floods());
    }

    private Table figures() {
        Table.Builder table = new Table.Builder("alarm-rates", "alarms", "figure", "at most", "held", "source")
                .numbers("figure", "at most");
        for (AlarmFigure f : performance.figures()) {
            String held = switch (f.verdict()) {
                case MET -> "yes";
                case MISSED -> "NO";
                case OPEN -> "";
            };
            table.row(f.what(), Cells.number(f.value(), f.decimals()), Cells.number(f.most(), 0), held, f.source());
        }
        return table.build();
    }

    private Table answers() {
        Table.Builder table = new Table.Builder(
                        "alarm-answers",
                        "alarm",
                        "raised",
                        "to be answered within min",
                        "in time",
                        "late",
                        "median min",
                        "slowest min",
                        "most often comes of")
                .numbers("raised", "to be answered within min", "in time", "late", "median min", "slowest min");
        for (AlarmPerformance.Answer a : performance.answers()) {
            AlarmRationale rationale = AlarmRationale.of(a.kind());
            table.row(
                    a.kind().word(),
                    Cells.count(a.raised()),
                    Cells.count(rationale.respondWithin().toMinutes()),
                    Cells.count(a.inTime()),
                    Cells.count(a.late()),
                    Cells.number(Math.floor(a.medianMin()), 0),
                    Cells.number(Math.floor(a.slowestMin()), 0),
                    rationale.cause());
        }
        return table.build();
    }

    private Table most() {
        Table.Builder table =
                new Table.Builder("alarms-most-often", "alarm", "raised", "chattered").numbers("raised", "chattered");
        for (AlarmRates.Count c : performance.most()) {
            int chattered = performance.chattering().stream()
                    .filter(x -> x.alarm().equals(c.alarm()))
                    .mapToInt(AlarmRates.Count::raised)
                    .sum();
            table.row(Cells.text(c.alarm()), Cells.count(c.raised()), Cells.count(chattered));
        }
        return table.build();
    }

    private Table floods() {
        Table.Builder table = new Table.Builder("alarm-floods", "from", "to", "raised").numbers("raised");
        for (AlarmRates.Flood f : performance.floods()) {
            table.row(
                    Times.FULL.of(f.from(), span.zone()), Times.FULL.of(f.to(), span.zone()), Cells.count(f.raised()));
        }
        return table.build();
    }
}
