package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class RampScoresTest {
    private static final int SIZE = 5;

    /** The same moves and innovations, whichever scores they come to. */
    private static void follow(RampScores scores, SplittableRandom random, int steps) {
        for (int i = 0; i < steps; i++) {
            int to = random.nextInt(SIZE);
            int from = random.nextInt(SIZE);
            double times = random.nextDouble(-1, 1);
            switch (random.nextInt(4)) {
                case 0 -> scores.adds(to, from, times);
                case 1 -> scores.becomes(to, from, times);
                case 2 -> scores.begin(i);
                default -> {
                    double[] gain = random.doubles(SIZE, 0, 0.5).toArray();
                    scores.innovation(i + times, 2, times, 1.5, gain);
                }
            }
        }
    }

    @Test
    void aCopyGoesOnAsItsOriginalWouldHave() {
        RampScores original = new RampScores(SIZE);
        follow(original, new SplittableRandom(1), 40);
        RampScores uncopied = new RampScores(SIZE);
        follow(uncopied, new SplittableRandom(1), 40);
        RampScores copy = original.copy();
        follow(copy, new SplittableRandom(2), 60);
        follow(uncopied, new SplittableRandom(2), 60);
        same(uncopied, copy);
    }

    @Test
    void copiesOfOneDoNotMoveEachOtherNorIt() {
        RampScores original = new RampScores(SIZE);
        follow(original, new SplittableRandom(3), 50);
        RampScores untouched = new RampScores(SIZE);
        follow(untouched, new SplittableRandom(3), 50);
        RampScores first = original.copy();
        RampScores second = original.copy();
        follow(first, new SplittableRandom(4), 50);
        follow(second, new SplittableRandom(5), 50);
        first.clear();
        same(untouched, original);
        RampScores alone = new RampScores(SIZE);
        follow(alone, new SplittableRandom(3), 50);
        follow(alone, new SplittableRandom(5), 50);
        same(alone, second);
    }

    private static void same(RampScores expected, RampScores is) {
        assertTrue(expected.count() > 0);
        assertEquals(expected.count(), is.count());
        for (int i = 0; i < expected.count(); i++) {
            assertEquals(expected.onsetMin(i), is.onsetMin(i));
            assertEquals(expected.rateLMin(i), is.rateLMin(i));
            assertEquals(expected.seLMin(i), is.seLMin(i));
        }
        assertEquals(expected.best(true), is.best(true));
        assertEquals(expected.best(false), is.best(false));
    }
}
