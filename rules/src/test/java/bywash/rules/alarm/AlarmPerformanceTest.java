package bywash.rules.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Marks: EEMUA 191 (5 an hour or 120 a day on average, 1 in 10 min, 10 in 10 min after an upset, 15 in the worst hour, 2 in
 * the worst minute), read in a secondary sheet; ANSI/ISA-18.2 from memory.
 */
class AlarmPerformanceTest {
    private static final Instant T0 = Instant.parse("2026-05-01T00:00:00Z");
    private static final Instant END = T0.plus(Duration.ofDays(30));

    private final List<AlarmTransition> lines = new ArrayList<>();

    private void line(Duration at, String subject, AlarmState state) {
        AlarmKind kind = AlarmKind.LOW_OXYGEN; // to be answered within 10 min
        lines.add(new AlarmTransition(T0.plus(at), kind, subject, state, kind.priority(), "i", "m", Map.of()));
    }

    private void spell(Duration from, String subject, Duration answered, Duration over) {
        line(from, subject, AlarmState.UNACKNOWLEDGED);
        line(from.plus(answered), subject, AlarmState.ACKNOWLEDGED);
        line(from.plus(over), subject, AlarmState.NORMAL);
    }

    private AlarmFigure figure(String what) {
        return AlarmPerformance.of(lines, T0, END).figures().stream()
                .filter(f -> f.what().equals(what))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void holdsAQuietMonthAgainstThePublishedMarks() {
        for (int day = 0; day < 30; day++) {
            spell(Duration.ofDays(day), "tank", Duration.ofMinutes(4), Duration.ofMinutes(90));
        }
        assertEquals(1.0, figure("a day, mean").value(), 1e-9);
        assertEquals(120, figure("a day, mean").most());
        assertEquals(30.0 / (30 * 144), figure("10 min, mean").value(), 1e-9);
        assertEquals(1, figure("10 min, mean").most());
        assertEquals(10, figure("10 min, most").most());
        assertEquals(15, figure("an hour, most").most());
        assertEquals(2, figure("a minute, most").most());
        AlarmPerformance.of(lines, T0, END).figures().stream()
                .skip(1)
                .forEach(f -> assertEquals(AlarmFigure.Verdict.MET, f.verdict(), f.toString()));
    }

    @Test
    void callsAFloodAPeakAndAChatterWhatTheyAre() {
        for (int i = 0; i < 16; i++) {
            line(Duration.ofSeconds(30L * i), "tank-" + i, AlarmState.UNACKNOWLEDGED);
        }
        for (int i = 0; i < 3; i++) {
            line(Duration.ofDays(2).plusSeconds(15L * i), "probe", AlarmState.UNACKNOWLEDGED);
            line(Duration.ofDays(2).plusSeconds(15L * i + 5), "probe", AlarmState.NORMAL);
        }
        assertEquals(16, figure("an hour, most").value());
        assertEquals(AlarmFigure.Verdict.MISSED, figure("an hour, most").verdict());
        assertEquals(16, figure("10 min, most").value());
        assertEquals(3, figure("a minute, most").value());
        assertEquals(1, figure("chattering").value());
        assertEquals(3, figure("over in a minute").value());
        assertEquals(16, figure("stale, over 1 d").value());
        assertTrue(figure("time in flood, %").value() > 0);
        assertEquals(16, AlarmPerformance.of(lines, T0, END).floods().get(0).raised());
    }

    @Test
    void tellsWhoWasAnsweredInTimeAndWhoWasNot() {
        spell(Duration.ofHours(1), "a", Duration.ofMinutes(4), Duration.ofMinutes(30));
        spell(Duration.ofHours(2), "b", Duration.ofMinutes(25), Duration.ofMinutes(30));
        line(Duration.ofHours(3), "c", AlarmState.UNACKNOWLEDGED);
        line(Duration.ofHours(3).plusMinutes(5), "c", AlarmState.RETURNED_UNACKNOWLEDGED);
        line(Duration.ofHours(4), "d", AlarmState.UNACKNOWLEDGED);
        line(Duration.ofDays(30).minusMinutes(3), "e", AlarmState.UNACKNOWLEDGED);
        AlarmPerformance.Answer answer =
                AlarmPerformance.of(lines, T0, END).answers().get(0);
        assertEquals(5, answer.raised());
        assertEquals(2, answer.inTime(), "a was answered, c was over");
        assertEquals(2, answer.late(), "b answered late, d never; e has time left");
        assertEquals(14.5, answer.medianMin(), 1e-9);
        assertEquals(25, answer.slowestMin(), 1e-9);
    }

    @Test
    void countsWhatStoodBeforeTheSpanAsStandingAndNotAsRaised() {
        line(Duration.ofDays(-3), "old", AlarmState.UNACKNOWLEDGED);
        line(Duration.ofDays(1), "old", AlarmState.NORMAL);
        assertEquals(0, figure("raised").value());
        assertEquals(1, figure("stale, over 1 d").value());
    }

    @Test
    void followsASpellThroughEveryState() {
        line(Duration.ZERO, "a", AlarmState.UNACKNOWLEDGED);
        line(Duration.ofMinutes(1), "a", AlarmState.RETURNED_UNACKNOWLEDGED);
        line(Duration.ofMinutes(2), "a", AlarmState.NORMAL);
        line(Duration.ofMinutes(3), "a", AlarmState.UNACKNOWLEDGED);
        line(Duration.ofMinutes(4), "a", AlarmState.SHELVED);
        line(Duration.ofMinutes(9), "a", AlarmState.UNACKNOWLEDGED);
        List<AlarmSpell> spells = AlarmSpell.of(lines);
        assertEquals(3, spells.size());
        assertEquals(T0.plusSeconds(120), spells.get(0).acknowledged(), "acknowledged after it was over");
        assertEquals(T0.plusSeconds(60), spells.get(0).over());
        assertEquals(AlarmState.SHELVED, spells.get(1).end());
        assertEquals(null, spells.get(2).over());
    }
}
