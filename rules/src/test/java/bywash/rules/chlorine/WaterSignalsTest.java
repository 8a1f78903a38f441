package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.chlorine.WaterSignals.Hearing;
import bywash.rules.event.Reading;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.site.Units;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class WaterSignalsTest {
    private static final Mains MAINS = new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11);
    private final SplittableRandom random = new SplittableRandom(3);
    private final WaterSignals signals = new WaterSignals(site());
    private Instant at = Instant.parse("2026-05-04T00:00:00Z");

    @Test
    void aProbeLiftedOutIsAJumpAndNoEvidenceOfChlorine() {
        play(240, 310);
        play(30, 450);
        assertEquals(Hearing.JUMPED, signals.orpHearing(at));
        assertTrue(signals.jumpMv() > 100);
        Posterior posterior = new Posterior(Belief.of(Residual.ZERO), 0.01, 19);
        Evidence evidence = new Evidence(signals, MAINS);
        evidence.weigh(at, posterior, 1, 0);
        assertTrue(evidence.lines().get(0).contains("jumped"), evidence.lines().toString());
        assertTrue(posterior.passed() < 0.01);
    }

    @Test
    void putBackIntoTheWaterItCountsAgain() {
        play(240, 310);
        play(30, 450);
        play(30, 310);
        assertEquals(Hearing.GOOD, signals.orpHearing(at));
    }

    @Test
    void aSlowClimbSpeaksForChlorineAndASteadyReadingAgainst() {
        play(240, 310);
        for (int i = 1; i <= 40; i++) {
            play(1, 310 + 2.2 * i);
        }
        assertEquals(Hearing.GOOD, signals.orpHearing(at));
        assertNotNull(signals.highSince());
        Residual maybe = new Residual(0.002, 0.015, 0.06);
        Posterior climbed = new Posterior(Belief.of(maybe), 0.01, 19);
        double before = climbed.passed();
        new Evidence(signals, MAINS).weigh(at, climbed, 1, 0);
        assertTrue(climbed.passed() > before, before + " to " + climbed.passed());
    }

    @Test
    void aProbeThatStaysQuietSpeaksAgainstButNeverRulesOut() {
        play(240, 310);
        Posterior posterior = new Posterior(Belief.of(new Residual(0.02, 0.06, 0.2)), 0.01, 19);
        new Evidence(signals, MAINS).weigh(at, posterior, 1, 0);
        assertTrue(posterior.passed() > 0.3 && posterior.passed() < 0.95, "passed " + posterior.passed());
        assertNull(signals.highSince());
    }

    @Test
    void aMissingProbeIsSaidAndWeighsNothing() {
        play(240, 310);
        at = at.plus(Duration.ofMinutes(10));
        assertEquals(Hearing.SILENT, signals.orpHearing(at));
        Posterior posterior = new Posterior(Belief.of(new Residual(0.002, 0.015, 0.06)), 0.01, 19);
        double before = posterior.passed();
        Evidence evidence = new Evidence(signals, MAINS);
        evidence.weigh(at, posterior, 1, 0);
        assertEquals(before, posterior.passed(), 1e-12);
        assertTrue(evidence.lines().get(0).contains("less is certain"));
    }

    @Test
    void aFallOfPhDoesNotPassForAnOxidant() {
        play(600, 310);
        for (int i = 0; i < 120; i++) {
            at = at.plusSeconds(30);
            double shift = Math.min(0.5, i * 0.02);
            signals.reading(new Reading("ph", at, 6.8 - shift + 0.01 * random.nextGaussian()), false);
            signals.reading(new Reading("orp", at, 310 + 59 * shift + 1.5 * random.nextGaussian()), false);
        }
        double sigmas = signals.riseMv() / signals.riseErrorMv();
        assertTrue(sigmas < 3, "sigmas " + sigmas);
    }

    private void play(int halfMinutes, double mv) {
        for (int i = 0; i < halfMinutes; i++) {
            at = at.plusSeconds(30);
            signals.reading(new Reading("ph", at, 6.8 + 0.01 * random.nextGaussian()), false);
            signals.reading(new Reading("orp", at, mv + 1.5 * random.nextGaussian()), false);
        }
    }

    private static Site site() {
        Vessel tank = new Vessel("tank", VesselRole.FISH_TANK, null, 1500, Double.NaN, null);
        Duration every = Duration.ofSeconds(30);
        return new Site(
                "s",
                "s",
                ZoneOffset.UTC,
                0,
                Stocking.FISH,
                Units.METRIC,
                MAINS,
                List.of(tank),
                List.of(
                        new Probe("orp", "tank", Quantity.ORP, null, every),
                        new Probe("ph", "tank", Quantity.PH, null, every)),
                List.of());
    }
}
