package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** How far foretold slopes are out, where it is known. */
class ForesightTest {
    private static final double SE = 0.3;

    /** Four days of phases of 4 min whose slope wanders as a sine of this amplitude over 20 hours. */
    private static Foresight after(double amplitude, long seed) {
        Random random = new Random(seed);
        Foresight foresight = new Foresight();
        for (double t = 0; t < 4 * 1440; t += 4) {
            double wander = amplitude * StrictMath.sin(2 * StrictMath.PI * t / 1200);
            foresight.missed(t, wander + SE * random.nextGaussian(), SE);
        }
        return foresight;
    }

    @Test
    void steadySlopesAreForetoldWithinTheirOwnNoise() {
        for (long seed = 1; seed <= 20; seed++) {
            assertTrue(after(0, seed).sdLMin() < 0.1, "seed " + seed);
        }
    }

    @Test
    void aWanderingSlopeIsKnownToBeOutByItsRootMeanSquare() {
        for (long seed = 1; seed <= 20; seed++) {
            assertEquals(0.5 / StrictMath.sqrt(2), after(0.5, seed).sdLMin(), 0.1, "seed " + seed);
        }
    }

    @Test
    void nothingIsClaimedAtTheStart() {
        assertEquals(0, new Foresight().sdLMin());
    }
}
