package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.chlorine.BatchView.Safety;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import java.time.Duration;
import java.time.Instant;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class ReserveBatchTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");
    private static final Mains CHLORINE = new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11);
    private static final Mains CHLORAMINE = new Mains(Disinfectant.CHLORAMINE, 2.0, 7.9, 120, 11);

    @Test
    void countsAsMainsWaterUntilSomethingIsKnown() {
        BatchView view = new ReserveBatch("reserve", CHLORINE, 1000).view(T);
        assertEquals(Safety.UNKNOWN, view.safety());
        assertEquals(0.9, view.residual().likelyMgL(), 1e-12);
        assertEquals(1.35, view.residual().highMgL(), 1e-12);
    }

    @Test
    void aTestThatFoundSomeIsOnRecordAlsoWithoutAFilling() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 1000);
        batch.tested(T, 0.3);
        BatchView view = batch.view(T);
        assertEquals(Safety.WAITING, view.safety());
        assertEquals("no filling on record, a test found chlorine; loss assumed for standing", view.words());
    }

    @Test
    void aTestOfZeroConfirmsItAndANewFillingTakesThatAway() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 1000);
        batch.filled(T, 500);
        batch.tested(hours(30), 0.01);
        assertTrue(batch.knownSafe());
        batch.filled(hours(31), 100);
        assertFalse(batch.knownSafe());
    }

    @Test
    @DisplayName("300 L of 0.9 mg/L into 600 L of clean water is 0.3 mg/L")
    void mixesANewFillingIntoTheOldByTheLevel() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 1000);
        Levels levels = new Levels(batch);
        levels.steady(600, 20);
        batch.tested(levels.at, 0);
        levels.rise(600, 900, 100);
        Residual r = batch.residual(levels.at);
        assertEquals(0.3, r.likelyMgL(), 0.02, "less some loss on the way");
        assertFalse(batch.knownSafe(), "a filling nobody declared takes the safety away as well");
        assertFalse(batch.view(levels.at).declared());
    }

    @Test
    void aDeclaredFillingIsMixedOnceWhetherEnteredBeforeOrAfter() {
        for (boolean before : new boolean[] {true, false}) {
            ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 1000);
            Levels levels = new Levels(batch);
            levels.steady(600, 20);
            batch.tested(levels.at, 0);
            if (before) {
                batch.filled(levels.at, 300);
            }
            levels.rise(600, 900, 100);
            if (!before) {
                batch.filled(levels.at, 300);
            }
            levels.steady(900, 150);
            BatchView view = batch.view(levels.at);
            assertTrue(view.declared(), "declared, entered before: " + before);
            double left = Math.exp(-0.04 * 2.5);
            assertEquals(0.3 * left, view.residual().likelyMgL(), 0.02, "entered before: " + before);
        }
    }

    @Test
    void aFillingEnteredLongAfterIsMixedByItsDeclaredLitres() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 1000);
        Levels levels = new Levels(batch);
        levels.steady(900, 20);
        batch.tested(levels.at, 0);
        batch.filled(levels.at, 300);
        assertEquals(1.35, batch.residual(levels.at).highMgL(), 1e-9, "meanwhile it counts as mains water");
        levels.steady(900, 130);
        assertEquals(0.3, batch.residual(levels.at).likelyMgL(), 0.01);
    }

    @Test
    void aSpikeOfTheProbeIsNoFilling() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 1000);
        Levels levels = new Levels(batch);
        levels.steady(600, 20);
        batch.tested(levels.at, 0);
        levels.one(900);
        levels.one(900);
        levels.steady(600, 60);
        assertTrue(batch.knownSafe());
    }

    @Test
    void saysTheEarliestTimeItCanBeExpectedSafeWithItsRange() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 500);
        batch.filled(T, 500);
        batch.treated(T, Treatment.AERATED, Double.NaN);
        BatchView view = batch.view(T);
        BatchView.SafeAt safeAt = view.safeAt();
        assertNotNull(safeAt);
        assertEquals(Safety.WAITING, view.safety());
        // ln(0.9/0.02)/0.15 = 25.4 h; low 0.45 at 0.6 per hour 5.2 h; high 1.35 at 0.04 per hour 105 h
        assertEquals(25.4, h(safeAt.likely()), 0.05);
        assertEquals(5.2, h(safeAt.earliest()), 0.05);
        assertEquals(105.3, h(safeAt.latest()), 0.05);
        assertEquals(Safety.EXPECTED, batch.view(hours(106)).safety(), "expected, not confirmed");
        assertFalse(batch.knownSafe());
    }

    @Test
    void learnsTheLossFromTwoTestsOfOneBatch() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 500);
        batch.filled(T, 500);
        batch.tested(hours(1), 0.8);
        batch.tested(hours(13), 0.4);
        BatchView view = batch.view(hours(13));
        assertEquals(Math.log(2) / 12, view.rate().likelyPerHour(), 1e-9);
        assertTrue(view.words().contains("learned from your tests"));
        assertTrue(view.rate().lowPerHour() > 0.01, "narrower than assumed");
    }

    @Test
    void chloramineIsNeverClearedByStanding() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORAMINE, 500);
        batch.filled(T, 500);
        batch.treated(T, Treatment.AERATED, Double.NaN);
        for (int day = 0; day <= 400; day += 40) {
            BatchView view = batch.view(hours(24 * day));
            assertEquals(Safety.NEVER, view.safety());
            assertNull(view.safeAt());
        }
        batch.tested(hours(24 * 400), 0);
        assertTrue(batch.knownSafe(), "only a test says so");
    }

    @Test
    @DisplayName(
            "chloramine in clean dark water: 2 mg/L is 1.57 to 1.88 mg/L after 7 days (US EPA model, via tidywater)")
    void chloramineRangeHoldsThePublishedDecay() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORAMINE, 500);
        batch.tested(T, 2.0);
        Residual r = batch.residual(hours(168));
        assertTrue(r.lowMgL() < 1.57 && r.highMgL() > 1.88, r.toString());
    }

    @Test
    @DisplayName("1 g ascorbic acid removes 1/2.484 g chlorine; chloramine leaves 0.1976 mg N a mg Cl2")
    void aDoseRemovesWhatItsStoichiometrySays() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORAMINE, 500);
        batch.filled(T, 500);
        batch.tested(T, 2.0);
        batch.treated(T, Treatment.ASCORBIC_ACID, 1.0);
        double removed = 1000 / 2.4841 / 500;
        BatchView view = batch.view(T);
        assertEquals(2.0 - removed, view.residual().likelyMgL(), 1e-3);
        assertEquals(removed * 0.19756, view.ammoniaMgL(), 1e-3);
        batch.treated(T, Treatment.ASCORBIC_ACID, 4.0);
        assertEquals(Safety.EXPECTED, batch.view(T).safety());
        assertFalse(batch.knownSafe(), "a test is still due");
    }

    @Test
    void aChemicalWithoutAnAmountRemovesNothingOnTheSafeSide() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 500);
        batch.tested(T, 1.0);
        batch.treated(T, Treatment.THIOSULFATE, Double.NaN);
        assertEquals(1.1, batch.residual(T).highMgL(), 1e-9);
        assertEquals(0, batch.residual(T).lowMgL(), 1e-9);
    }

    @Test
    void aFreeChlorineZeroConfirmsNothing() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORAMINE, 500);
        batch.filled(T, 500);
        batch.testedFree(hours(1), 0);
        assertFalse(batch.knownSafe());
    }

    @Test
    void freeChlorineThatIsFoundIsThere() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 500);
        batch.tested(T, 0);
        batch.testedFree(T, 0.6);
        Residual r = batch.residual(T);
        assertEquals(0.6, r.likelyMgL(), 1e-9);
        assertTrue(r.lowMgL() > 0.5 && r.highMgL() > 0.6, r.toString());
        assertFalse(batch.knownSafe());
    }

    @Test
    void freeChlorineBelowWhatIsReckonedTakesNothingFromIt() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 500);
        batch.tested(T, 0.8);
        batch.testedFree(T, 0.3);
        assertEquals(0.8, batch.residual(T).likelyMgL(), 1e-9, "combined chlorine may be the rest");
    }

    @Test
    @DisplayName(
            "without a level probe: 400 L that stood clean and 100 L of 0.9 mg/L are 500 L of 0.18 mg/L, at most all mains")
    void aFillingMixesIntoWhatRoomThereWas() {
        ReserveBatch batch = new ReserveBatch("reserve", CHLORINE, 500);
        batch.filled(T, 500);
        batch.tested(hours(1), 0);
        batch.released(100);
        batch.filled(hours(1), 100);
        Residual r = batch.residual(hours(1));
        assertEquals(0.18, r.likelyMgL(), 0.02);
        assertEquals(1.35, r.highMgL(), 1e-9, "what was released may have been more");
    }

    private static double h(@org.jspecify.annotations.Nullable Instant at) {
        assertNotNull(at);
        return Duration.between(T, at).toMillis() / 3_600_000.0;
    }

    private static Instant hours(double h) {
        return T.plusMillis(Math.round(h * 3_600_000));
    }

    /** A noisy level every 10 s. */
    private static final class Levels {
        private final ReserveBatch batch;
        private final SplittableRandom random = new SplittableRandom(9);
        private Instant at = T;

        Levels(ReserveBatch batch) {
            this.batch = batch;
        }

        void one(double litres) {
            at = at.plusSeconds(10);
            batch.level(at, litres + 1.4 * random.nextGaussian());
        }

        void steady(double litres, int minutes) {
            rise(litres, litres, minutes);
        }

        void rise(double from, double to, int minutes) {
            for (int i = 1; i <= minutes * 6; i++) {
                one(from + (to - from) * i / (minutes * 6.0));
            }
        }
    }
}
