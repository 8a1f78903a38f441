package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.published.PublishedTable;
import bywash.rules.site.SystemVolume;
import bywash.rules.water.LossRate;
import bywash.rules.water.MixedTank;
import java.time.Instant;
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
        balance.tested(0.1, 0.02);
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
        balance.tested(0, 0.02);
        assertEquals(0.02, balance.residual().highMgL(), 1e-9);
        assertTrue(balance.residual().likelyMgL() <= 0.02);
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
