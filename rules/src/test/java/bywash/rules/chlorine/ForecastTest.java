package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.site.SystemVolume;
import bywash.rules.water.LossRate;
import java.time.Duration;
import java.time.Instant;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** When a criterion of 19 ug/L (US EPA 1985, acute) will be passed, upward and downward. */
class ForecastTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");
    private static final Instant NOW = T.plus(Duration.ofMinutes(5));
    private static final double ACUTE_UG_L = 19;
    private static final LossRate NONE = new LossRate(0, 0, 0);

    private static SystemBalance balance(LossRate loss) {
        SystemBalance balance = new SystemBalance(loss);
        balance.tick(NOW, new SystemVolume(1900, 2000, 2100), false);
        return balance;
    }

    /** So much for five minutes, and on. */
    private static Inflow inflow(double flowLMin, Residual residual) {
        return new Inflow(T, NOW, Litres.of(5 * flowLMin), flowLMin, residual, "outside");
    }

    private static Crossing acute(SystemBalance balance) {
        return new Forecast(balance).crossing(NOW, ACUTE_UG_L);
    }

    private static double minutes(@Nullable Instant at) {
        assertNotNull(at);
        return Duration.between(NOW, at).toMillis() / 60_000.0;
    }

    /** The residual of a tank that fills, by Hipparchus; ug/L. */
    private static double filledUgL(
            double volumeL, double startMgL, double flowLMin, double inMgL, double perHour, double minutes) {
        OrdinaryDifferentialEquation mass = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 1;
            }

            @Override
            public double[] computeDerivatives(double t, double[] mg) {
                return new double[] {flowLMin * inMgL - perHour / 60 * mg[0]};
            }
        };
        double heldMg = new DormandPrince853Integrator(1e-6, 10, 1e-10, 1e-10)
                .integrate(mass, new ODEState(0, new double[] {volumeL * startMgL}), minutes)
                .getPrimaryState()[0];
        return 1000 * heldMg / (volumeL + flowLMin * minutes);
    }

    @Test
    @DisplayName("each end of the range passes when the differential equation says so (Hipparchus)")
    void risesAsTheEquationSays() {
        SystemBalance balance = balance(new LossRate(0.05, 0.2, 0.5));
        balance.inflow("sump", inflow(4, new Residual(0.8, 1, 1.2)));
        Residual r = balance.residual();
        Crossing crossing = acute(balance);
        assertTrue(crossing.rising() && crossing.expected());
        assertEquals(19, filledUgL(1900, r.highMgL(), 4, 1.2, 0.05, minutes(crossing.earliest())), 1e-3);
        assertEquals(19, filledUgL(2000, r.likelyMgL(), 4, 1, 0.2, minutes(crossing.likely())), 1e-3);
        assertEquals(19, filledUgL(2100, r.lowMgL(), 4, 0.8, 0.5, minutes(crossing.latest())), 1e-3);
    }

    @Test
    void severalInflowsCountByTheirRates() {
        SystemBalance balance = balance(NONE);
        balance.inflow("sump", inflow(0.5, new Residual(1, 1, 1)));
        balance.inflow("fish-tank", inflow(0.25, Residual.ZERO));
        double start = balance.residual().likelyMgL();
        double minutes = minutes(acute(balance).likely());
        assertEquals(19, filledUgL(2000, start, 0.75, 0.5 / 0.75, 0, minutes), 1e-3);
    }

    @Test
    void waterThatMayHaveNoneMayNeverPassIt() {
        SystemBalance balance = balance(NONE);
        balance.inflow("sump", inflow(4, new Residual(0, 0.9, 1.35)));
        Crossing crossing = acute(balance);
        assertNotNull(crossing.likely());
        assertNull(crossing.latest());
    }

    @Test
    @DisplayName("38.74 L of 1 mg/L bring 2000 L to 19 ug/L: at 0.03 L/min within a day, at 0.02 not")
    void looksADayAhead() {
        SystemBalance quick = balance(NONE);
        quick.inflow("sump", inflow(0.03, new Residual(1, 1, 1)));
        assertEquals(38.735 / 0.03 - 5, minutes(acute(quick).likely()), 1);
        SystemBalance slow = balance(NONE);
        slow.inflow("sump", inflow(0.02, new Residual(1, 1, 1)));
        assertNull(acute(slow).likely());
    }

    @Test
    void whatIsPassedAlreadyIsPassedNow() {
        SystemBalance balance = balance(NONE);
        balance.inflow("sump", inflow(10, new Residual(0, 1, 1)));
        Crossing crossing = acute(balance);
        assertEquals(NOW, crossing.earliest());
        assertEquals(NOW, crossing.likely());
        double stands = 1000 * balance.residual().highMgL();
        assertEquals(NOW, new Forecast(balance).crossing(NOW, stands).earliest(), "to the point");
        SystemBalance sure = balance(NONE);
        sure.inflow("sump", inflow(10, new Residual(1, 1, 1)));
        assertFalse(acute(sure).expected(), "all of the range is above it, and rises");
    }

    @Test
    @DisplayName("standing water falls by its rate of loss: ln(C / 19) / k hours")
    void fallsOnceNothingRuns() {
        SystemBalance balance = balance(new LossRate(0.05, 0.2, 0.5));
        balance.inflow("sump", inflow(30, new Residual(0.8, 1, 1.2)));
        balance.ended("sump");
        Residual r = balance.residual();
        Crossing crossing = acute(balance);
        assertFalse(crossing.rising());
        assertEquals(60 * Math.log(r.lowMgL() / 0.019) / 0.5, minutes(crossing.earliest()), 1e-3);
        assertEquals(60 * Math.log(r.likelyMgL() / 0.019) / 0.2, minutes(crossing.likely()), 1e-3);
        assertEquals(60 * Math.log(r.highMgL() / 0.019) / 0.05, minutes(crossing.latest()), 1e-3);
    }

    @Test
    @DisplayName("a fall is foretold thirty days ahead")
    void foretellsAFallOfAMonthAtMost() {
        for (double hours : new double[] {719, 721}) {
            SystemBalance balance = balance(NONE);
            balance.inflow("sump", inflow(30, new Residual(1, 1, 1)));
            balance.ended("sump");
            double k = Math.log(balance.residual().likelyMgL() / 0.019) / hours;
            SystemBalance slow = balance(new LossRate(k, k, k));
            slow.inflow("sump", inflow(30, new Residual(1, 1, 1)));
            slow.ended("sump");
            assertEquals(hours < 720, acute(slow).likely() != null, hours + " h");
        }
    }

    @Test
    void cleanWaterThatStandsPassesNothing() {
        assertFalse(acute(balance(NONE)).expected());
    }
}
