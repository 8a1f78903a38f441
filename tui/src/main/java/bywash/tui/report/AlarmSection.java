package bywash.tui.report;

import bywash.rules.alarm.AlarmRationale;
import bywash.rules.alarm.AlarmSpell;
import bywash.tui.view.Words;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Each alarm that stood: when it was raised, answered and over, and what it most often comes of. */
final class AlarmSection implements Section {
    private final Span span;

    AlarmSection(Span span) {
        this.span = span;
    }

    @Override
    public List<Block> blocks() {
        Table table = table(Times.LOCAL);
        return List.of(
                new Block.Heading("Alarms"),
                table.rows().isEmpty()
                        ? new Block.Paragraph("No alarm stood in this time.")
                        : new Block.Grid(table.without("message", "incident", "most often comes of")));
    }

    @Override
    public List<Table> tables() {
        return List.of(table(Times.FULL));
    }

    private Table table(Times times) {
        Table.Builder table = new Table.Builder(
                        "alarms",
                        "raised",
                        "alarm",
                        "subject",
                        "priority",
                        "answered",
                        "answered after min",
                        "to be answered within min",
                        "over",
                        "ended as",
                        "stood min",
                        "calls",
                        "message",
                        "most often comes of",
                        "incident")
                .numbers("answered after min", "to be answered within min", "stood min", "calls");
        for (AlarmSpell s : span.spells()) {
            AlarmRationale rationale = AlarmRationale.of(s.kind());
            table.row(
                    times.of(s.raised().at(), span.zone()),
                    s.kind().word(),
                    Cells.text(s.subject()),
                    s.raised().priority().word(),
                    times.of(s.acknowledged(), span.zone()),
                    minutes(s.raised().at(), s.acknowledged()),
                    Cells.count(rationale.respondWithin().toMinutes()),
                    times.of(s.over(), span.zone()),
                    s.end() == null ? "still stands" : s.end().word(),
                    minutes(s.raised().at(), s.over()),
                    Cells.count(s.calls()),
                    Cells.text(s.raised().message()),
                    rationale.cause(),
                    s.incident());
        }
        return table.build();
    }

    private static String minutes(Instant from, @Nullable Instant to) {
        return to == null ? "" : Cells.count(Duration.between(from, to).toMinutes());
    }

    /** How soon the first of them was answered, in words. */
    static String answered(List<AlarmSpell> spells) {
        return spells.stream()
                .filter(s -> s.acknowledged() != null)
                .min(Comparator.comparing(s -> Objects.requireNonNull(s.acknowledged())))
                .map(s -> "First answered "
                        + Words.span(spells.get(0).raised().at(), Objects.requireNonNull(s.acknowledged()))
                        + " after the first call.")
                .orElse("Not answered yet.");
    }
}
