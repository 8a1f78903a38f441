package bywash.ingest.mqtt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine.Message;
import java.time.Instant;
import java.util.Map;
import org.junit.jupiter.api.Test;

class FloodGateTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");
    /** One each 10 s on each of two topics. */
    private static final FloodLimits LIMITS = new FloodLimits(Map.of("a", 0.1, "b", 0.1), 20_000_000);

    private final FloodGate gate = new FloodGate(LIMITS);
    private long ms;

    private int passed(String topic, int messages, double perSecond, int bytes) {
        int passed = 0;
        double from = ms;
        for (int i = 0; i < messages; i++) {
            ms = Math.round(from + i * 1000 / perSecond);
            passed += gate.judge(new Message(T0.plusMillis(ms), topic, new byte[bytes], 0, false)) == null ? 1 : 0;
        }
        return passed;
    }

    private Instant now() {
        return T0.plusMillis(ms);
    }

    @Test
    void takesTenTimesWhatIsDeclaredForEver() {
        assertEquals(100_000, passed("a", 100_000, 1, 20));
        assertEquals("", gate.words(now()));
    }

    /** As a gateway sends it that was cut off for a night. */
    @Test
    void takesADayOfWhatIsDeclaredAtOnce() {
        assertEquals(8640, passed("a", 8640, 1e6, 100));
    }

    @Test
    void letsAFairSampleOfAFloodThroughAndNamesTheTopicAndItsRate() {
        passed("a", 20_000, 20_000, 20);
        int passed = passed("a", 400_000, 20_000, 20);
        assertTrue(passed >= 20 && passed <= 30, () -> passed + " of 20 s");
        assertEquals(
                "FLOOD on a: 20000 messages a second, 1.2 let through; find who sends it",
                gate.words(now()),
                "one a second, and the topic's own share");
        assertEquals(20, passed("b", 20, 0.1, 20), "others are not touched");
        assertEquals("", gate.words(now().plusSeconds(61)));
        assertTrue(gate.dropped(FloodGate.Reason.TOPIC) > 400_000);
        assertEquals(0, gate.dropped(FloodGate.Reason.DAY));
    }

    @Test
    void countsALongPayloadForAsManyAsItIsLong() {
        assertTrue(passed("a", 1000, 1e6, 60_000) < 80);
    }

    @Test
    void takesNoMoreOfADayThanItsBytesButWhatIsDeclared() {
        FloodGate small = new FloodGate(new FloodLimits(Map.of("a", 0.1, "b", 0.1), 100_000));
        long bytes = 0;
        int declared = 0;
        for (int s = 0; s < 86_400; s++) {
            Instant at = T0.plusSeconds(s);
            bytes += small.judge(new Message(at, "a", new byte[400], 0, false)) == null ? 440 : 0;
            if (s % 10 == 0) {
                assertNull(small.judge(new Message(at, "b", new byte[40], 0, false)), "declared");
                declared++;
            }
        }
        assertEquals(8640, declared);
        long most =
                200_000 + (60 + 2 * 8640) * 440L; // the day's bytes, at once and over the day, and the topic's share
        long taken = bytes;
        assertTrue(taken <= most, () -> taken + " bytes of the flood");
        assertTrue(small.dropped(FloodGate.Reason.DAY) > 50_000);
        assertTrue(small.words(T0.plusSeconds(86_400)).startsWith("FLOOD on a: 1 messages a second, 0.2 let"));
    }

    @Test
    void topicsOfNoProbeShareOneLimit() {
        int passed = 0;
        for (int i = 0; i < 10_000; i++) {
            passed += passed("x" + i, 1, 1000, 20);
            ms++;
        }
        int all = passed;
        assertTrue(all >= 1000 && all <= 1011, () -> all + " passed");
        assertTrue(gate.words(now()).startsWith("FLOOD on topics of no probe: "), gate.words(now()));
    }

    @Test
    void theQueueCountsWhatItDropsByReason() {
        InboundQueue queue = new InboundQueue(LIMITS);
        for (int i = 0; i < 10_000; i++) {
            queue.offer(new Message(T0, "a", new byte[4], 0, false));
        }
        assertFalse(queue.flood(T0).isEmpty());
        assertEquals(10_000, queue.overTopic() + queue.counts().waiting());
        assertEquals(queue.overTopic(), queue.dropped());
        assertEquals(0, queue.overDay() + queue.counts().dropped());
    }
}
