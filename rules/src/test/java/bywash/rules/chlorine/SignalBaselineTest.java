package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SignalBaselineTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");

    private final SplittableRandom random = new SplittableRandom(5);
    private final SignalBaseline baseline = new SignalBaseline(6 * 3600, 2, ZoneOffset.UTC);
    private Instant at = T;

    @Test
    void learnsTheUsualValueAndItsSpread() {
        play(2 * 120, 310, false);
        assertTrue(baseline.learned());
        assertEquals(0, baseline.riseSigmas(), 1.5);
    }

    @Test
    void saysARiseInSigmasAndHoldsTheBaselineInAnIncident() {
        play(2 * 120, 310, false);
        play(60, 370, true);
        assertEquals(60, baseline.rise(), 3);
        assertTrue(baseline.riseSigmas() > 6, "sigmas " + baseline.riseSigmas());
        play(600, 370, true);
        assertEquals(60, baseline.rise(), 3);
    }

    @Test
    void saysNothingInSigmasBeforeHalfAnHour() {
        play(50, 310, false);
        assertTrue(Double.isNaN(baseline.riseSigmas()));
        assertEquals(0, baseline.rise(), 3);
    }

    @Test
    void twoReadingsOfOneMomentDoNotSpoilIt() {
        baseline.add(at, 310, false);
        baseline.add(at, 311, false);
        play(120, 310, false);
        assertEquals(0, baseline.riseSigmas(), 1.5);
    }

    @Test
    void learnsTheCourseOfTheDayOverDaysAndThenNoLongerTakesItForARise() {
        double first = highestRiseMv();
        double last = first;
        for (int day = 2; day <= 5; day++) {
            last = highestRiseMv();
        }
        assertTrue(last < 0.5 * first, "day 1: " + first + " mV, day 5: " + last + " mV");
    }

    /** A day with a swing of 30 mV up and down; the highest rise over the usual in it. */
    private double highestRiseMv() {
        double highest = 0;
        for (int i = 0; i < 2880; i++) {
            play(1, 310 + 30 * Math.sin(2 * Math.PI * i / 2880.0), false);
            highest = Math.max(highest, baseline.rise());
        }
        return highest;
    }

    private void play(int readings, double mv, boolean hold) {
        for (int i = 0; i < readings; i++) {
            at = at.plusSeconds(30);
            baseline.add(at, mv + 1.5 * random.nextGaussian(), hold);
        }
    }
}
