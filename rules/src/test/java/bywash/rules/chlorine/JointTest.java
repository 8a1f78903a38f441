package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.water.LossRate;
import java.time.Instant;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class JointTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");
    private static final LossRate LOSS = new LossRate(0.02, 0.2, 2);
    private static final double ERROR_MV = 3;

    /** About 60 ug/L of mains water, some hours ago. */
    private static Belief after(double hours) {
        Inflow in = new Inflow(
                T,
                T.plusSeconds(600),
                Litres.of(120),
                12,
                new Residual(0.6, 1, 1.4),
                new Residual(0.6, 1, 1.4),
                "mains");
        return Belief.clean().with(in, Litres.of(2000), LOSS, hours);
    }

    private static Likelihood reading(double riseMv) {
        return (ugL, answer, water) -> {
            double expected = answer.riseMv(ugL);
            double sd = Math.sqrt(ERROR_MV * ERROR_MV + 0.04 * expected * expected);
            double z = Math.min(8, Math.abs(riseMv - expected) / sd);
            return Math.exp(-0.5 * z * z) / sd + 1e-5;
        };
    }

    private static double chance(Joint told, double hours, double riseMv) {
        Posterior posterior = new Posterior(after(hours), told, Unseen.NONE, 19);
        posterior.take(reading(riseMv));
        return posterior.passed();
    }

    @Test
    void aProbeThatAnsweredStronglyAndIsBackTellsOfAFastLoss() {
        Joint told = new Joint();
        for (int minute = 0; minute < 60; minute++) {
            told.learn(after(minute / 60.0), reading(100), 1 / 60.0);
        }
        double alone = chance(new Joint(), 2, 12);
        double withPast = chance(told, 2, 12);
        assertTrue(withPast < alone / 2, "alone " + alone + ", with what was told before " + withPast);
    }

    @Test
    @DisplayName(
            "a probe that stayed still is fouled or the water is clean: the share of fouled ones rises, by Bayes' theorem by hand")
    void aStillProbeMayBeFouled() {
        Joint told = new Joint();
        for (int minute = 0; minute < 240; minute++) {
            told.learn(after(0), reading(0), 1 / 60.0);
        }
        double fouled = told.told(0, Case.RATES / 2, Joint.AMOUNTS / 2, ProbeAnswer.FOULED);
        double good = told.told(0, Case.RATES / 2, Joint.AMOUNTS / 2, ProbeAnswer.GOOD);
        assertTrue(fouled > 0.9 && good < 0.05, "fouled " + fouled + ", good " + good);
        assertTrue(chance(told, 0, 0) > 0.9, "the balance knows of 60 ug/L: a still probe does not take that away");
    }

    @Test
    void whatIsForgottenCountsNoMore() {
        Joint told = new Joint();
        told.learn(after(0), reading(100), 1);
        double before = chance(new Joint(), 2, 12);
        told.forget();
        assertEquals(before, chance(told, 2, 12), 1e-12);
    }

    @Test
    void sharesOfTheAmountMakeOne() {
        double sum = 0;
        for (int i = 0; i < Joint.AMOUNTS; i++) {
            sum += Joint.share(i);
        }
        assertEquals(1, sum, 1e-12);
    }
}
