package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SpikeGuardTest {
    private static double gaussian(SplittableRandom random) {
        double u = 1 - random.nextDouble();
        return StrictMath.sqrt(-2 * StrictMath.log(u)) * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
    }

    @Test
    void noSingleSpikeGetsThrough() {
        SpikeGuard guard = new SpikeGuard(1.5);
        for (int i = 0; i < 300; i++) {
            double litres = i % 7 == 3 ? 900 : 400;
            if (guard.add(i / 6.0, litres)) {
                assertEquals(400, guard.volumeL());
            }
        }
    }

    @Test
    void aSampleSentTwiceOrLateCountsOnce() {
        SpikeGuard guard = new SpikeGuard(1.5);
        guard.add(1, 400);
        guard.add(2, 401);
        assertTrue(guard.add(3, 402));
        assertFalse(guard.add(3, 500));
        assertFalse(guard.add(2.5, 500));
        assertEquals(401, guard.volumeL());
    }

    @Test
    void learnsTheNoiseFromWhateverStart() {
        for (double start : new double[] {0.3, 8}) {
            SpikeGuard guard = new SpikeGuard(start);
            SplittableRandom random = new SplittableRandom(2);
            for (int i = 0; i < 2000; i++) {
                guard.add(i / 6.0, 400 + 1.6 * gaussian(random));
            }
            assertEquals(1.6, guard.noiseL(), 0.3);
        }
    }

    @Test
    void aProbeThatReadsInStepsIsNoBetterThanItsStep() {
        SpikeGuard guard = new SpikeGuard(1.5);
        SplittableRandom random = new SplittableRandom(2);
        for (int i = 0; i < 2000; i++) {
            guard.add(i / 6.0, 5.5 * StrictMath.rint((400 + 0.01 * i + 0.5 * gaussian(random)) / 5.5));
        }
        assertTrue(guard.noiseL() >= 2.5, "noise " + guard.noiseL());
    }
}
