package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PosteriorTest {
    @ParameterizedTest(name = "likely {0}, high {1}: {2}")
    @DisplayName(
            "the prior is the normal distribution's: half above the median, 5 % above the high end (tables of the normal)")
    @CsvSource({"19, 40, 0.50", "10, 19, 0.05", "19, 60, 0.50"})
    void priorIsLogNormal(double likely, double high, double expected) {
        Posterior p = new Posterior(new Residual(likely / 3000, likely / 1000, high / 1000), 0, 19);
        assertEquals(expected, p.passed(), 0.09);
    }

    @Test
    @DisplayName("Bayes' theorem by hand: prior 0.01, evidence 50 times as likely: 0.336")
    void takesEvidenceAsBayesSays() {
        Posterior p = new Posterior(Residual.ZERO, 0.01, 0.5);
        double factor = p.take(c -> c > 0 ? 0.5 : 0.01);
        assertEquals(50, factor, 1e-9);
        assertEquals(0.01 * 50 / (0.01 * 50 + 0.99), p.passed(), 1e-9);
    }

    @Test
    void evidenceThatIsAlikeEverywhereChangesNothing() {
        Posterior p = new Posterior(new Residual(0.005, 0.015, 0.04), 0.01, 19);
        double before = p.passed();
        assertEquals(1, p.take(c -> 0.123), 1e-9);
        assertEquals(before, p.passed(), 1e-12);
    }

    @Test
    void aCleanBalanceWithNothingUnseenCannotBePassed() {
        Posterior p = new Posterior(Residual.ZERO, 0, 19);
        p.take(c -> c + 1);
        assertEquals(0, p.passed(), 0);
        assertEquals(0, p.quantile(0.95), 0);
    }

    @Test
    void wordsFollowKassAndRaftery() {
        assertEquals("weight 2.0, hardly tells", Evidence.words(2));
        assertEquals("weight 1/5.0, tells against", Evidence.words(0.2));
        assertTrue(Evidence.words(60).contains("strong for"));
        assertTrue(Evidence.words(500).contains("very strong for"));
    }
}
