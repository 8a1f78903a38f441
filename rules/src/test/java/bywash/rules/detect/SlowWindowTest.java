package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SlowWindowTest {
    private static final int LENGTH = 26;
    private static final double RATE_L_MIN = 1.2;

    private final double[] ring = new double[2000];
    private final SlowWindow window = new SlowWindow(LENGTH);
    private int count;

    private void minute(double meanL) {
        ring[count % ring.length] = meanL;
        count++;
        window.look(ring, null, count, count > 600);
    }

    /** Ten quiet hours, then a flow for so many minutes. */
    private void flowed(int ageMin) {
        for (int i = 0; i < 600; i++) {
            minute(400);
        }
        for (int i = 0; i < ageMin; i++) {
            minute(400 + RATE_L_MIN * (i + 0.5));
        }
    }

    @ParameterizedTest
    @CsvSource({"12", "20", "40"})
    void knowsWhatRateMakesItsDifferenceOfAGivenAge(int ageMin) {
        flowed(ageMin);
        assertEquals(RATE_L_MIN, window.rateSinceLMin(ageMin), 0.03 * RATE_L_MIN);
    }

    @ParameterizedTest
    @CsvSource({"12, 3", "12, 30", "20, 80"})
    void itsGrowthRulesOtherAgesOut(int ageMin, double otherMin) {
        flowed(ageMin);
        assertTrue(Double.isNaN(window.rateSinceLMin(otherMin)), "" + window.rateSinceLMin(otherMin));
    }

    @ParameterizedTest
    @CsvSource({"20"})
    void whatElseIsKnownCountsForItAndAgainstIt(int ageMin) {
        flowed(ageMin);
        double score = window.score();
        double own = 5.5 * 5.5 / 2 * (score * score - 1);
        assertTrue(score > 0.7, "score " + score);
        assertTrue(window.shows(w -> 0.1 - own));
        assertFalse(window.shows(w -> -0.1 - own));
    }
}
