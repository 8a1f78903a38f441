package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Drains of 20 L/min that last for one minute and a half. */
class SlowRiseTest {
    private static final double STEP_MIN = 1 / 6.0;
    private static final double RATE_L_MIN = 20;

    private final SlowRise rise = new SlowRise(true);
    private double tMin;
    private int drains;

    private SlowRiseTest() {
        while (drains < 200) {
            lasts(1.5, RATE_L_MIN, true);
            lasts(6, -8, false);
            drains++;
        }
    }

    private void lasts(double minutes, double rateLMin, boolean still) {
        for (double until = tMin + minutes; tMin < until - 1e-9; tMin += STEP_MIN) {
            rise.rate(tMin, rateLMin, still, 1, drains, false);
        }
    }

    @Test
    void aRiseThatLastsLongerThanAnyDrainAndStillRisesIsFound() {
        double from = tMin;
        lasts(2.5, RATE_L_MIN, true);
        assertTrue(Double.isNaN(rise.foundSinceMin(2)), "not longer than drains may be");
        lasts(1, RATE_L_MIN, true);
        assertEquals(from, rise.foundSinceMin(2));
    }

    /** The minute before still shows the rise of a drain that is over: it is no rise that lasts. */
    @Test
    void aDrainThatHasJustEndedLastsNoLonger() {
        lasts(2.5, RATE_L_MIN, true);
        lasts(1, RATE_L_MIN / 2, false);
        assertTrue(Double.isNaN(rise.foundSinceMin(2)));
    }
}
