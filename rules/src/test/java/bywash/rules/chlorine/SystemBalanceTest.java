package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.published.PublishedTable;
import bywash.rules.site.SystemVolume;
import bywash.rules.water.LossRate;
import bywash.rules.water.MixedTank;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SystemBalanceTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");
    private static final Residual ONE = new Residual(1, 1, 1);

    @Test
    @DisplayName("the system's balance equals EPANET 2.2 within 2e-4 mg/L and SciPy's ODE within 1e-9")
    void equalsEpanet() {
        int rows = 0;
        for (PublishedTable.Row row : PublishedTable.read("mixed_tank", 444).rows()) {
            if (row.text("scenario").startsWith("fill")) {
                boolean hour = row.text("scenario").equals("fill1h");
                Residual r = filled(row.number("k_per_h"), row.number("t_min"), hour ? 60 : 1e9);
                row.near("C_ode_mgL", r.likelyMgL(), 1e-9);
                row.near("C_epanet_q1s_mgL", r.likelyMgL(), 2e-4);
                assertEquals(r.lowMgL(), r.highMgL(), 1e-12);
                rows++;
            } else if (row.text("scenario").equals("overflow")) {
                Residual r = spilt(row.number("k_per_h"), row.number("t_min"));
                row.near("C_ode_mgL", r.lowMgL(), 1e-9);
                row.near("C_epanet_q1s_mgL", r.lowMgL(), 2e-4);
                rows++;
            }
        }
        assertEquals(333, rows);
    }

    private static Residual filled(double k, double minutes, double stopMin) {
        SystemBalance balance = new SystemBalance(new LossRate(k, k, k));
        for (double m = 0; m <= minutes + 1e-9; m += 5) {
            double in = Math.min(m, stopMin);
            balance.tick(at(m), volume(2000 + 4 * in), false);
            if (m <= stopMin) {
                balance.inflow("sump", inflow(m, 4 * m));
            } else {
                balance.ended("sump");
            }
        }
        return balance.residual();
    }

    private static Residual spilt(double k, double minutes) {
        SystemBalance balance = new SystemBalance(new LossRate(k, k, k));
        balance.tick(at(minutes), volume(2000), true);
        balance.inflow("sump", inflow(minutes, 4 * minutes));
        return balance.residual();
    }

    private static Inflow inflow(double untilMin, double litres) {
        return new Inflow(T, at(untilMin), Litres.of(litres), 4, ONE, "outside");
    }

    @Test
    void aBetterEstimateOfTheLitresReplacesTheOlder() {
        SystemBalance balance = new SystemBalance(new LossRate(0, 0, 0));
        balance.tick(at(10), volume(2000), false);
        balance.inflow("sump", inflow(10, 80));
        balance.inflow("sump", inflow(10, 40));
        assertEquals(0.02, balance.residual().likelyMgL(), 1e-9);
        assertEquals(40, balance.enteredL(), 1e-9);
    }

    @Test
    void waterOfUnknownSourceIsNamedSoWhileItRunsAndForAsLongAsItIsThere() {
        SystemBalance balance = new SystemBalance(new LossRate(0.1, 0.1, 0.1));
        balance.tick(at(10), volume(2000), false);
        balance.inflow("sump", inflow(10, 40));
        assertFalse(balance.unknownSource(), "mains water is known");
        balance.ended("sump");
        balance.inflow("sump", new Inflow(at(5), at(10), Litres.of(20), 4, ONE, new Residual(0, 0, 0), "unknown"));
        assertTrue(balance.unknownSource(), "it runs");
        balance.ended("sump");
        balance.tick(at(15), volume(2060), false);
        assertTrue(balance.unknownSource(), "it has ended");
        balance.inflow("sump", new Inflow(at(12), at(15), Litres.of(12), 4, ONE, "outside"));
        assertTrue(balance.unknownSource(), "and other water came after it");
        balance.ended("sump");
        balance.tick(at(60 * 24 * 30), volume(2000), false);
        assertFalse(balance.unknownSource(), "a month later nothing of it is left");
    }

    @Test
    void anInflowFoundAnewWithAnEarlierOnsetIsNotCountedTwice() {
        SystemBalance balance = new SystemBalance(new LossRate(0, 0, 0));
        balance.tick(at(10), volume(2000), false);
        balance.inflow("sump", inflow(10, 40));
        balance.ended("sump");
        balance.tick(at(20), volume(2040), false);
        balance.inflow("sump", new Inflow(at(5), at(20), Litres.of(60), 4, ONE, "outside"));
        assertEquals(80, balance.enteredL(), 1e-9, "ten minutes each at 4 L/min");
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void theTruthOfAnyRateInTheRangeStaysInside(long seed) {
        var random = new java.util.SplittableRandom(seed);
        LossRate loss = new LossRate(0.03, 0.3, 2);
        SystemBalance balance = new SystemBalance(loss);
        double k = 0.03 + random.nextDouble() * 1.9;
        double q = 1 + 8 * random.nextDouble();
        double mains = 0.6 + 0.6 * random.nextDouble();
        double litres = 1500 + 800 * random.nextDouble();
        MixedTank truth = new MixedTank(litres, 0);
        for (int m = 1; m <= 90; m++) {
            boolean runs = m <= 45;
            truth = runs ? truth.filling(new MixedTank.Inflow(q, mains), k, 1) : truth.standing(k, 1);
            double v = truth.volumeL();
            balance.tick(at(m), new SystemVolume(0.95 * v, v, 1.05 * v), false);
            if (runs) {
                Litres in = new Litres(0.9 * q * m, q * m, 1.1 * q * m);
                balance.inflow("sump", new Inflow(T, at(m), in, q, new Residual(0.45, 0.9, 1.35), "outside"));
            } else {
                balance.ended("sump");
            }
            Residual r = balance.residual();
            assertTrue(
                    r.lowMgL() <= truth.residualMgL() && truth.residualMgL() <= r.highMgL(),
                    m + ": " + truth.residualMgL() + " outside " + r);
        }
    }

    @Test
    void saysBeforehandWhenACriterionIsPassed() {
        SystemBalance balance = new SystemBalance(new LossRate(0.3, 0.3, 0.3));
        balance.tick(at(5), volume(2020), false);
        balance.inflow("sump", inflow(5, 20));
        Crossing acute = new Forecast(balance).crossing(at(5), 19);
        assertTrue(acute.rising());
        Instant likely = assertNotNull2(acute.likely());
        double minutes = java.time.Duration.between(T, likely).toMillis() / 60_000.0;
        double then = new MixedTank(2000, 0)
                .filling(new MixedTank.Inflow(4, 1), 0.3, minutes)
                .residualMgL();
        assertEquals(0.019, then, 1e-6);
        Crossing chronic = new Forecast(balance).crossing(at(5), 11);
        assertTrue(assertNotNull2(chronic.likely()).isBefore(likely));
    }

    @Test
    void saysWhenItWillHaveFallenBelow() {
        SystemBalance balance = new SystemBalance(new LossRate(0.03, 0.3, 2));
        balance.tick(at(0), volume(2000), false);
        balance.tested(at(0), 0.1, 0.02);
        balance.tick(at(1), volume(2000), false);
        Crossing acute = new Forecast(balance).crossing(at(1), 19);
        assertTrue(!acute.rising());
        assertTrue(assertNotNull2(acute.earliest()).isBefore(assertNotNull2(acute.likely())));
        assertNull(new Forecast(balance).crossing(at(1), 500).earliest());
    }

    @Test
    void aZeroTestTakesTheRangeDownAndKeepsWhatTheKitCannotSee() {
        SystemBalance balance = new SystemBalance(new LossRate(0.03, 0.3, 2));
        balance.tick(at(60), volume(2000), false);
        balance.inflow("sump", inflow(60, 240));
        balance.tested(at(60), 0, 0.02);
        assertEquals(0.02, balance.residual().highMgL(), 1e-9);
        assertTrue(balance.residual().likelyMgL() <= 0.02);
    }

    @Test
    void aDoseThatIsTakenBackIsAsIfItHadNotBeenGiven() {
        SystemBalance never = played(b -> {});
        SystemBalance dosed = played(b -> b.dosed(at(20), 60_000));
        SystemBalance undone = played(b -> b.dosed(at(20), 60_000));
        undone.undosed(at(20), 60_000);
        assertTrue(dosed.residual().likelyMgL() < never.residual().likelyMgL() / 2, "the dose counts");
        assertTrue(chance(dosed) < 0.8 * chance(never), chance(dosed) + " after " + chance(never));
        assertEquals(never.residual().likelyMgL(), undone.residual().likelyMgL(), 1e-9);
        assertEquals(never.residual().lowMgL(), undone.residual().lowMgL(), 1e-9);
        assertEquals(chance(never), chance(undone), 1e-9);
    }

    @Test
    void aTestThatIsTakenBackIsAsIfItHadNotBeenMade() {
        SystemBalance never = played(b -> {});
        SystemBalance undone = played(b -> b.tested(at(20), 0, 0.02));
        assertTrue(chance(undone) < 0.5 * chance(never), "the test counts");
        undone.untested(at(20), 0);
        assertEquals(never.residual(), undone.residual());
        assertEquals(chance(never), chance(undone), 1e-9);
    }

    @Test
    void anEntryMadeLateCountsFromItsOwnTime() {
        SystemBalance late = played(b -> {});
        late.dosed(at(20), 60_000);
        SystemBalance inTime = played(b -> b.dosed(at(20), 60_000));
        assertEquals(inTime.residual().likelyMgL(), late.residual().likelyMgL(), 1e-9);
        assertEquals(chance(inTime), chance(late), 1e-9);
    }

    @Test
    void goesOnWhereAnotherEnded() {
        SystemBalance one = played(b -> b.dosed(at(20), 20_000));
        SystemBalance other = new SystemBalance(new LossRate(0.02, 0.2, 2));
        other.restore(at(60), one.memory());
        for (SystemBalance b : List.of(one, other)) {
            b.tick(at(300), volume(2040), false);
        }
        assertEquals(one.residual(), other.residual());
        assertEquals(chance(one), chance(other), 1e-12);
        other.undosed(at(20), 20_000);
        one.undosed(at(20), 20_000);
        assertEquals(one.residual(), other.residual());
    }

    @Test
    @DisplayName(
            "a test that finds none after mains water would have brought 60 ug/L speaks for other water (Bayes by hand)")
    void aTestTellsOfTheWater() {
        Inflow rain = new Inflow(T, at(10), Litres.of(120), 12, new Residual(0.5, 1, 1.5), Residual.ZERO, "unknown");
        Belief before = Belief.clean().with(rain, Litres.of(2000), new LossRate(0, 0, 0), 0);
        Belief after = before.tested(0, 0.02);
        double other = after.cases().get(1).share();
        double sd = 0.06 * Math.log(2) / 1.645;
        double error = 0.02 / 1.645;
        double mains = 0.8 * Math.exp(-0.5 * 0.06 * 0.06 / (sd * sd + error * error)) / Math.hypot(sd, error);
        double none = 0.2 / Math.hypot(0, error);
        assertEquals(none / (none + mains), other, 0.01);
        assertTrue(other > 0.5, "share of other water " + other);
        assertEquals(0.2, after.ofOtherWater().cases().get(1).share(), 1e-9);
    }

    @Test
    void aTestThatFindsChlorineInWaterHeldCleanCounts() {
        SystemBalance balance = new SystemBalance(new LossRate(0.02, 0.2, 2));
        balance.tick(at(10), volume(2040), false);
        balance.tested(at(10), 0.05, 0.02);
        assertEquals(0.05, balance.residual().likelyMgL(), 1e-9);
        assertTrue(chance(balance) > 0.99, "chance " + chance(balance));
    }

    /** Ten minutes of 4 L/min, 40 L of mains water; then what is done, and an hour in all. */
    private static SystemBalance played(java.util.function.Consumer<SystemBalance> then) {
        SystemBalance balance = new SystemBalance(new LossRate(0.02, 0.2, 2));
        balance.tick(at(10), volume(2040), false);
        Litres litres = new Litres(35, 40, 45);
        balance.inflow("sump", new Inflow(T, at(10), litres, 4, new Residual(0.9, 1.8, 2.7), Residual.ZERO, "unknown"));
        balance.ended("sump");
        balance.tick(at(20), volume(2040), false);
        then.accept(balance);
        balance.tick(at(60), volume(2040), false);
        return balance;
    }

    private static double chance(SystemBalance balance) {
        return new Posterior(balance.belief(), 0, 19).passed();
    }

    private static Instant assertNotNull2(@org.jspecify.annotations.Nullable Instant at) {
        assertNotNull(at);
        return at;
    }

    private static SystemVolume volume(double litres) {
        return new SystemVolume(litres, litres, litres);
    }

    private static Instant at(double minutes) {
        return T.plusMillis(Math.round(minutes * 60_000));
    }
}
