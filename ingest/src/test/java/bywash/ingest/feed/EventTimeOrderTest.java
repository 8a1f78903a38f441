package bywash.ingest.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.EngineEvent;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EventTimeOrderTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");

    private final List<EngineEvent> out = new ArrayList<>();
    private final List<EngineEvent> late = new ArrayList<>();
    private final EventTimeOrder order = new EventTimeOrder(EventTimeOrder.DEFAULT_LATENESS, out::add, late::add);

    private static EngineEvent reading(String probe, double second) {
        return new EngineEvent.ReadingArrived(new Reading(probe, T0.plusMillis(Math.round(second * 1000)), second));
    }

    private static String shown(EngineEvent e) {
        String at = Double.toString(Duration.between(T0, e.at()).toMillis() / 1000.0)
                .replaceAll("\\.0$", "");
        if (e instanceof EngineEvent.ReadingArrived r) {
            return r.reading().probe() + at;
        }
        return (e instanceof EngineEvent.Tick ? "tick" : "entry") + at;
    }

    private String shown() {
        return String.join(" ", out.stream().map(EventTimeOrderTest::shown).toList());
    }

    private long ticks() {
        return out.stream().filter(e -> e instanceof EngineEvent.Tick).count();
    }

    @Test
    void ordersWithinTheLatenessAndTicksBetween() {
        for (double s : new double[] {1, 3, 2, 5, 4.5, 8, 11}) {
            order.offer(reading("a", s));
        }
        order.finish();
        assertEquals("a1 a2 a3 a4.5 a5 tick5 a8 tick10 a11", shown());
        assertEquals(List.of(), late);
    }

    @Test
    void tiesGoByProbeThenByArrival() {
        order.offer(reading("b", 1));
        order.offer(reading("a", 1));
        order.finish();
        assertEquals("a1 b1", shown());
    }

    @Test
    void countsLateReadingsAndKeepsLateEntries() {
        order.offer(reading("a", 10));
        order.offer(reading("a", 7.9));
        order.offer(new EngineEvent.OperatorActed(new OperatorEntry.TopUpEnd(T0.plusSeconds(2), "sump")));
        order.finish();
        assertEquals("entry2 a10 tick10", shown());
        assertEquals(1, order.lateCount());
        assertEquals(1, late.size());
    }

    @Test
    void aProbeWhoseClockRunsAheadMakesNobodyLate() {
        order.offer(reading("ahead", 1800), T0.plusSeconds(1));
        order.offer(reading("a", 2), T0.plusSeconds(2));
        order.offer(reading("a", 12), T0.plusSeconds(12));
        assertEquals("a2 tick5", shown());
        assertEquals(0, order.lateCount());
    }

    @Test
    void theClockMakesTicksWithoutReadings() {
        order.offer(reading("a", 1));
        order.advanceTo(T0.plusSeconds(13));
        assertEquals("a1 tick5 tick10", shown());
    }

    @Test
    void saysToTheMillisecondWhenTheNextTickFallsDue() {
        assertNull(order.nextTickDue());
        order.offer(reading("a", 1));
        order.advanceTo(T0.plusSeconds(6));
        Instant due = Objects.requireNonNull(order.nextTickDue());
        order.advanceTo(due.minusMillis(1));
        assertEquals("a1", shown());
        order.advanceTo(due);
        assertEquals("a1 tick5", shown());
        assertEquals(due.plusSeconds(5), order.nextTickDue());
    }

    @Test
    void aClockThatTicksInBetweenChangesNothing() {
        List<EngineEvent> events = List.of(
                reading("a", 1), reading("b", 0.5), reading("a", 4000), reading("b", 3999), reading("a", 200_000));
        events.forEach(order::offer);
        order.finish();
        String straight = shown();
        out.clear();
        EventTimeOrder live = new EventTimeOrder(EventTimeOrder.DEFAULT_LATENESS, out::add, late::add);
        Instant now = T0;
        for (EngineEvent e : events) {
            for (; now.isBefore(e.at()); now = now.plusMillis(700)) {
                live.advanceTo(now);
            }
            live.offer(e);
        }
        live.finish();
        assertEquals(straight, shown());
        assertEquals(List.of(), late);
    }

    @Test
    void aLongGapTicksMoreAndMoreSeldom() {
        order.offer(reading("a", 0));
        order.offer(reading("a", 7200));
        order.finish();
        assertEquals(721 + 60, ticks());
        order.offer(reading("a", 7200 + 60 * 365 * 86_400.0));
        order.finish();
        assertTrue(ticks() < 30_000, "ticks " + ticks());
        assertTrue(out.stream()
                .filter(e -> e instanceof EngineEvent.Tick)
                .allMatch(e -> e.at().getEpochSecond() % 5 == 0));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void aFeedShuffledWithinTheLatenessGivesTheSame(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<EngineEvent> events = new ArrayList<>();
        for (int i = 0; i < 500; i++) {
            events.add(reading("p" + i % 7, random.nextInt(2000) / 4.0));
        }
        List<EngineEvent> sorted = new ArrayList<>(events);
        sorted.sort((a, b) -> a.at().compareTo(b.at()));
        sorted.forEach(order::offer);
        order.finish();
        String straight = shown();
        out.clear();
        List<EngineEvent> shuffled = new ArrayList<>(sorted);
        shuffled.sort((a, b) -> Long.compare(key(a, seed), key(b, seed)));
        EventTimeOrder second = new EventTimeOrder(EventTimeOrder.DEFAULT_LATENESS, out::add, late::add);
        shuffled.forEach(second::offer);
        second.finish();
        assertEquals(straight, shown());
        assertEquals(List.of(), late);
    }

    private static long key(EngineEvent e, long seed) {
        long at = e.at().toEpochMilli();
        return at + Math.floorMod(e.hashCode() * 31L + seed, 1900L);
    }
}
