package bywash.rules.water;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.published.PublishedTable;
import java.util.SplittableRandom;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MixedTankTest {
    private static final MixedTank.Inflow MAINS = new MixedTank.Inflow(4, 1);

    @Test
    @DisplayName("closed form: SciPy's ODE 1e-9 mg/L, EPANET 2.2 2e-4 mg/L, volume 0.05 L")
    void closedFormEqualsEpanetAndScipy() {
        int epanet = 0;
        for (PublishedTable.Row row : PublishedTable.read("mixed_tank", 444).rows()) {
            MixedTank tank = scenario(row.text("scenario"), row.number("k_per_h"), row.number("t_min"));
            row.near("C_analytic_mgL", tank.residualMgL(), 1e-9);
            row.near("C_ode_mgL", tank.residualMgL(), 1e-9);
            row.near("V_analytic_L", tank.volumeL(), 0.05);
            if (row.has("C_epanet_q1s_mgL")) {
                row.near("C_epanet_q1s_mgL", tank.residualMgL(), 2e-4);
                row.near("C_epanet_q30s_mgL", tank.residualMgL(), 2e-4);
                epanet++;
            }
        }
        assertEquals(333, epanet, "rows with an EPANET value");
    }

    @Test
    @DisplayName("the stepwise balance equals EPANET 2.2 within 2e-4 mg/L and the closed form within 1e-9")
    void stepwiseEqualsEpanet() {
        for (PublishedTable.Row row : PublishedTable.read("mixed_tank", 444).rows()) {
            String name = row.text("scenario");
            double k = row.number("k_per_h");
            TankBalance balance = TankBalance.start(new MixedTank(2000, name.equals("decayonly") ? 1 : 0));
            for (int quarter = 0; quarter < 4 * row.number("t_min"); quarter++) {
                boolean runs = !name.equals("decayonly") && !(name.equals("fill1h") && quarter >= 240);
                double capacity = name.equals("overflow") ? 2000 : 10_000;
                balance = balance.step(runs ? MAINS : new MixedTank.Inflow(0, 0), capacity, k, 0.25);
            }
            row.near("C_analytic_mgL", balance.residualMgL(), 1e-9);
            if (row.has("C_epanet_q1s_mgL")) {
                row.near("C_epanet_q1s_mgL", balance.residualMgL(), 2e-4);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    @DisplayName("closed form equals Hipparchus's Dormand-Prince 8(5,3) integration")
    void closedFormEqualsHipparchus(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 20; i++) {
            MixedTank start = new MixedTank(random.nextDouble(200, 5000), random.nextDouble(0, 0.5));
            MixedTank.Inflow inflow = new MixedTank.Inflow(random.nextDouble(0.1, 12), random.nextDouble(0.2, 4));
            double k = random.nextDouble(0, 2);
            double minutes = random.nextDouble(1, 600);
            assertEquals(
                    integrate(start, inflow, k, minutes, false),
                    start.filling(inflow, k, minutes).residualMgL(),
                    1e-9);
            assertEquals(
                    integrate(start, inflow, k, minutes, true),
                    start.overflowing(inflow, k, minutes).residualMgL(),
                    1e-9);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void massIsConservedThroughFillingAndOverflowing(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        TankBalance balance = TankBalance.start(new MixedTank(500, 0.3));
        double start = balance.heldMg();
        double filled = 0;
        for (int i = 0; i < 500; i++) {
            MixedTank.Inflow inflow = new MixedTank.Inflow(random.nextDouble(0, 8), random.nextDouble(0, 2));
            double minutes = random.nextDouble(0, 3);
            filled += inflow.flowLMin() * minutes;
            balance = balance.step(inflow, 1200, random.nextDouble(0, 1), minutes);
            double accounted = balance.heldMg() + balance.spiltMg() + balance.lostMg();
            assertEquals(start + balance.enteredMg(), accounted, 1e-6);
            assertEquals(Math.min(1200, 500 + filled), balance.volumeL(), 1e-6);
        }
        assertTrue(balance.spiltMg() > 0 && balance.lostMg() > 0);
    }

    @Test
    void mainsWaterThatReachesALimit() {
        MixedTank tank = new MixedTank(2000, 0);
        double litres = tank.litresUntil(0.019, 1.0);
        assertEquals(38.735, litres, 0.001);
        assertEquals(0.019, tank.filling(MAINS, 0, litres / 4).residualMgL(), 1e-12);
        assertEquals(Double.POSITIVE_INFINITY, tank.litresUntil(0.019, 0.01), 0);
        assertEquals(0, new MixedTank(2000, 0.02).litresUntil(0.019, 1), 0);
    }

    @Test
    void whatIsInTheTankAlreadyLeavesRoomForLess() {
        MixedTank tank = new MixedTank(2000, 0.011);
        double litres = tank.litresUntil(0.019, 1.0);
        assertEquals(0.019, tank.filling(MAINS, 0, litres / 4).residualMgL(), 1e-12);
        assertEquals(0, tank.litresUntil(0.011, 1.0), 0, "it is there");
        assertEquals(Double.POSITIVE_INFINITY, tank.litresUntil(0.019, 0.019), 0, "never quite");
    }

    @Test
    void outOfRangeIsRefusedWithTheRange() {
        assertEquals(
                "volume is 0 L; it must be above 0 and at most 10000000 L",
                assertThrows(IllegalArgumentException.class, () -> new MixedTank(0, 0))
                        .getMessage());
        MixedTank tank = new MixedTank(100, 0);
        assertThrows(IllegalArgumentException.class, () -> tank.standing(-1, 10));
        assertThrows(IllegalArgumentException.class, () -> tank.standing(1, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new MixedTank.Inflow(-1, 0));
        assertThrows(
                IllegalArgumentException.class, () -> TankBalance.start(tank).step(MAINS, 90, 0, 1));
    }

    private static MixedTank scenario(String name, double k, double minutes) {
        MixedTank clean = new MixedTank(2000, 0);
        return switch (name) {
            case "fill" -> clean.filling(MAINS, k, minutes);
            case "overflow" -> clean.overflowing(MAINS, k, minutes);
            case "fill1h" -> clean.filling(MAINS, k, Math.min(60, minutes)).standing(k, Math.max(0, minutes - 60));
            case "decayonly" -> new MixedTank(2000, 1).standing(k, minutes);
            default -> throw new AssertionError(name);
        };
    }

    private static double integrate(
            MixedTank start, MixedTank.Inflow inflow, double kPerHour, double minutes, boolean spilling) {
        double q = inflow.flowLMin();
        OrdinaryDifferentialEquation massAndVolume = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 2;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                double out = spilling ? q / y[1] : 0;
                return new double[] {q * inflow.residualMgL() - (out + kPerHour / 60) * y[0], spilling ? 0 : q};
            }
        };
        double[] first = {start.volumeL() * start.residualMgL(), start.volumeL()};
        double[] last = new DormandPrince853Integrator(1e-8, 10, 1e-9, 1e-13)
                .integrate(massAndVolume, new ODEState(0, first), minutes)
                .getPrimaryState();
        return last[0] / last[1];
    }
}
