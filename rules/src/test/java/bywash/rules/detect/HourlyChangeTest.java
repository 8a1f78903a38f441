package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HourlyChangeTest {
    private static final int STEPS_A_MINUTE = 6;

    /** The swing of a siphon bed, litres. */
    private static double swingL(double tMin) {
        return 30 * Math.abs(2 * (tMin / 14 - Math.floor(tMin / 14 + 0.5)));
    }

    /** Plays from a minute to another; the volume rises by {@code riseLMin}, and minutes of the hole are not heard. */
    private static void play(HourlyChange hour, int from, int to, int holeFrom, int holeTo, long seed) {
        SplittableRandom random = new SplittableRandom(seed + from);
        for (int i = from * STEPS_A_MINUTE; i < to * STEPS_A_MINUTE; i++) {
            double tMin = i / (double) STEPS_A_MINUTE;
            if (tMin < holeFrom || tMin >= holeTo) {
                hour.add(tMin, 400 + swingL(tMin) + random.nextDouble(-1, 1), true);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void aHoleIsLessKnownAndNotNoChange(long seed) {
        HourlyChange whole = new HourlyChange(true);
        HourlyChange holed = new HourlyChange(true);
        play(whole, 0, 600, 0, 0, seed);
        play(holed, 0, 600, 590, 594, seed);
        assertTrue(holed.seL() > 1.1 * whole.seL(), "with a hole " + holed.seL() + ", without " + whole.seL());
        double off = Math.abs(holed.changeL() - whole.changeL());
        assertTrue(off <= 3 * holed.seL(), "off by " + off + " with an error of " + holed.seL());
    }

    @Test
    void whereTooLittleWasHeardTheChangeIsNotKnown() {
        HourlyChange hour = new HourlyChange(false);
        play(hour, 0, 300, 0, 0, 1);
        assertTrue(!Double.isNaN(hour.changeL()));
        play(hour, 300, 304, 300, 303, 1);
        hour.add(304.5, 400, true);
        assertTrue(Double.isNaN(hour.changeL()), "one minute of three: " + hour.changeL());
    }

    @Test
    void aHoleTeachesNothing() {
        HourlyChange whole = new HourlyChange(false);
        HourlyChange holed = new HourlyChange(false);
        play(whole, 0, 400, 0, 0, 1);
        play(holed, 0, 400, 0, 0, 1);
        double before = holed.usualL();
        holed.add(402.5, 405, true); // a minute is missing
        holed.add(403.5, 405, true);
        assertEquals(before, holed.usualL(), 1e-12);
        whole.add(400.5, 405, true);
        whole.add(401.5, 405, true);
        whole.add(402.5, 405, true);
        assertTrue(whole.usualL() != before, "without a hole it learns");
    }
}
