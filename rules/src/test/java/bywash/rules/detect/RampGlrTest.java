package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.detect.RampGlr.Candidate;
import bywash.rules.published.PublishedTable;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class RampGlrTest {
    private static double gaussian(SplittableRandom random) {
        double u = 1 - random.nextDouble();
        return StrictMath.sqrt(-2 * StrictMath.log(u)) * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
    }

    /** Cobb, 1978, Biometrika 65, 243-251: the Nile's mean fell after 1898. A fall of the mean is a ramp of the sum. */
    @Test
    void findsTheChangeOfTheNileInItsPublishedYear() {
        List<PublishedTable.Row> rows = PublishedTable.read("nile", 100).rows();
        double sd = 127.6737;
        RampGlr glr = new RampGlr(sd * StrictMath.sqrt(60), 1);
        double sum = 0;
        for (int i = 0; i < 45; i++) {
            glr.add(i, sum, 1e-6);
            sum += rows.get(i).number("flow") - 1097.75;
        }
        Candidate fall = glr.best(false, 0);
        assertNotNull(fall);
        assertEquals(28, fall.onsetMin(), 3);
        assertEquals(849.97 - 1097.75, fall.rateLMin(), 3 * sd / StrictMath.sqrt(16));
        assertTrue(fall.logRatio(0) > 16, "l " + fall.logRatio(0));
    }

    /** Wilks, 1938, Ann. Math. Stat. 9, 60-62: twice the log ratio of one true zero is chi squared with one degree. */
    @Test
    void twiceTheLogRatioOfAFixedOnsetIsChiSquaredWhileNothingFlows() {
        SplittableRandom random = new SplittableRandom(4);
        int runs = 4000;
        double mean = 0;
        int above = 0;
        for (int k = 0; k < runs; k++) {
            RampGlr glr = new RampGlr(0.001, 1e9);
            Candidate c = null;
            for (int i = 0; i < 60; i++) {
                glr.add(i / 6.0, 1.5 * gaussian(random), 2.25);
                c = c == null ? glr.best(true, 0) : c;
            }
            Candidate only = glr.best(true, 0) != null ? glr.best(true, 0) : glr.best(false, 0);
            assertNotNull(only);
            mean += 2 * only.logRatio(0) / runs;
            above += 2 * only.logRatio(0) > 3.841 ? 1 : 0;
        }
        double standardError = StrictMath.sqrt(2.0 / runs);
        assertEquals(1, mean, 4 * standardError + 0.05);
        assertEquals(0.05, above / (double) runs, 4 * StrictMath.sqrt(0.05 * 0.95 / runs) + 0.01);
    }

    @Test
    void estimatesTheRateOfARampWhoseOnsetItDoesNotKnow() {
        SplittableRandom random = new SplittableRandom(9);
        int inside = 0;
        for (int k = 0; k < 200; k++) {
            RampGlr glr = new RampGlr(0.5, 0.5);
            for (int i = 0; i < 120; i++) {
                double t = i / 6.0;
                glr.add(t, StrictMath.max(0, t - 10) * 4 + 1.6 * gaussian(random), 2.56);
            }
            Candidate c = glr.best(true, 0);
            assertNotNull(c);
            assertEquals(10, c.onsetMin(), 2.5);
            inside += StrictMath.abs(c.rateLMin() - 4) < 1 ? 1 : 0;
        }
        assertTrue(inside > 180, "inside " + inside);
    }
}
