package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A lost line or a restart hides some minutes of a sump that siphons swing: nobody knows how it stood, so nothing follows. */
class FlowAcrossGapsTest {
    private static final double LEARNED_MIN = 480;

    private final VesselFlow flow =
            new VesselFlow(1.5, new Hold(3, 300, 75), Duration.ofSeconds(10), Pump.TOLD, Double.POSITIVE_INFINITY);

    private static KnownSump sump(long seed) {
        return new KnownSump(new double[] {6.5, 7.5, 5.5}, new double[] {70, 85, 60}, seed);
    }

    private void second(KnownSump sump, long second, boolean heard) {
        sump.step();
        if (second % 10 == 0 && heard) {
            flow.level(second / 60.0, sump.readL());
        }
        if (second % 5 == 0) {
            flow.decide(second / 60.0);
        }
    }

    /** Two days, in which every forty minutes or so two to nine of them are missing. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void findsNoFlowInWhatItMissed(long seed) {
        KnownSump sump = sump(seed);
        SplittableRandom random = new SplittableRandom(seed);
        double from = LEARNED_MIN;
        double until = LEARNED_MIN;
        TreeSet<String> found = new TreeSet<>();
        for (long second = 0; second < (LEARNED_MIN + 2880) * 60; second++) {
            double now = second / 60.0;
            if (now > until) {
                from = now + random.nextDouble(20, 60);
                until = from + random.nextDouble(2, 9);
            }
            second(sump, second, now < from || now >= until || now < LEARNED_MIN);
            if (flow.motion() == Motion.IN || flow.motion() == Motion.OUT) {
                found.add(flow.motion() + " since minute " + Math.round(flow.onsetMin()));
            }
        }
        assertEquals(new TreeSet<>(), found);
    }

    /** What begins while nobody listens is found all the same. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void findsAnInflowThatBeganInAGap(long seed) {
        KnownSump sump = sump(seed);
        double after = Double.POSITIVE_INFINITY;
        for (long second = 0; second < (LEARNED_MIN + 60) * 60 && after > 60; second++) {
            double now = second / 60.0;
            sump.inflowLMin = now >= LEARNED_MIN + 2 ? 4 : 0;
            second(sump, second, now < LEARNED_MIN || now >= LEARNED_MIN + 4);
            after = flow.motion() == Motion.IN ? now - LEARNED_MIN - 4 : after;
        }
        assertTrue(after > 0 && after < 30, "after " + after);
    }
}
