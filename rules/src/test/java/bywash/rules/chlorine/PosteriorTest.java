package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PosteriorTest {
    @ParameterizedTest(name = "likely {0}, high {1}: {2}")
    @DisplayName(
            "the prior is the normal distribution's: half above the median, 5 % above the high end (tables of the normal)")
    @CsvSource({"19, 40, 0.50", "10, 19, 0.05", "19, 60, 0.50"})
    void priorIsLogNormal(double likely, double high, double expected) {
        Posterior p = new Posterior(Belief.of(new Residual(likely / 3000, likely / 1000, high / 1000)), 0, 19);
        assertEquals(expected, p.passed(), 0.09);
    }

    @Test
    @DisplayName("Bayes' theorem by hand: prior 0.01, evidence 50 times as likely: 0.336")
    void takesEvidenceAsBayesSays() {
        Posterior p = new Posterior(Belief.of(Residual.ZERO), 0.01, 0.5);
        double factor = p.take(c -> c > 0 ? 0.5 : 0.01);
        assertEquals(50, factor, 1e-9);
        assertEquals(0.01 * 50 / (0.01 * 50 + 0.99), p.passed(), 1e-9);
    }

    @Test
    void evidenceThatIsAlikeEverywhereChangesNothing() {
        Posterior p = new Posterior(Belief.of(new Residual(0.005, 0.015, 0.04)), 0.01, 19);
        double before = p.passed();
        assertEquals(1, p.take(c -> 0.123), 1e-9);
        assertEquals(before, p.passed(), 1e-12);
    }

    @Test
    void aCleanBalanceWithNothingUnseenCannotBePassed() {
        Posterior p = new Posterior(Belief.of(Residual.ZERO), 0, 19);
        p.take(c -> c + 1);
        assertEquals(0, p.passed(), 0);
        assertEquals(0, p.quantile(0.95), 0);
    }

    @Test
    void wordsFollowKassAndRaftery() {
        assertEquals("weight 2.0, hardly tells", Evidence.words(2));
        assertEquals("weight 1/5.0, tells against", Evidence.words(0.2));
        assertTrue(Evidence.words(60).contains("tells much for"));
        assertTrue(Evidence.words(500).contains("tells very much for"));
    }

    @Test
    void theNormalDistributionIsThatOfHipparchus() {
        NormalDistribution normal = new NormalDistribution();
        for (double z = -6; z <= 6; z += 0.25) {
            assertEquals(normal.cumulativeProbability(z), Posterior.normalBelow(z), 1e-7);
        }
    }

    @ParameterizedTest(name = "{0} to {1} to {2} ug/L, criterion {3}")
    @DisplayName(
            "without evidence the range is the balance's and the chance that of its normal distribution (Hipparchus)")
    @CsvSource({"5, 15, 40, 19", "20, 30, 50, 19", "0.5, 2, 9, 11", "300, 350, 400, 19", "17, 19, 21, 19"})
    void rangeAndChanceAreOneDistribution(double low, double likely, double high, double limit) {
        Posterior p = new Posterior(Belief.of(new Residual(low / 1000, likely / 1000, high / 1000)), 0, limit);
        double grain = 0.09; // half a cell
        assertEquals(low, p.quantile(0.05), grain * low);
        assertEquals(likely, p.quantile(0.5), grain * likely);
        assertEquals(high, p.quantile(0.95), grain * high);
        double end = limit > likely ? high : low;
        double spread = Math.abs(Math.log(end / likely)) / 1.645;
        NormalDistribution normal = new NormalDistribution(Math.log(likely), spread);
        assertEquals(1 - normal.cumulativeProbability(Math.log(limit)), p.passed(), 0.03);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    @DisplayName("whatever the evidence: a chance of 99 % above the criterion never stands beside a low end below it")
    void noChanceSpeaksAgainstTheRange(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double likely = Math.exp(8 * random.nextDouble() - 2);
        Residual balance = new Residual(
                random.nextBoolean() ? 0 : likely / 2000, likely / 1000, likely * (1 + 5 * random.nextDouble()) / 1000);
        Posterior p = new Posterior(Belief.of(balance), 0.01, 19);
        double centre = Math.log(1 + 100 * random.nextDouble());
        p.take(c -> 1e-6 + Math.exp(-Math.pow(Math.log(c + 1e-3) - centre, 2) / 2));
        for (double share : new double[] {0.01, 0.05, 0.5, 0.95, 0.99}) {
            double value = p.quantile(share);
            if (value > 0) {
                assertEquals(1 - share, p.above(value), 1e-9, "above " + value);
            }
        }
        assertEquals(p.passed() > 0.95, p.quantile(0.05) > 19);
        assertEquals(p.passed() > 0.05, p.quantile(0.95) > 19);
    }

    @Test
    @DisplayName(
            "a dose that takes all of 100 ug/L, and one in ten does nothing: nothing likely, a chance of 10 % (by hand)")
    void whatADoseMayNotHaveRemovedIsStillPossible() {
        Belief dosed = Belief.of(new Residual(0.09, 0.1, 0.11)).dosed(0.2);
        Posterior p = new Posterior(dosed, 0, 19);
        assertEquals(0, p.quantile(0.05), 0);
        assertEquals(0, p.quantile(0.5), 0);
        assertEquals(100, p.quantile(0.95), 9);
        assertEquals(Belief.DOSE_FAILS, p.passed(), 1e-6);
    }
}
