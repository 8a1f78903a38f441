package bywash.rules.husbandry.ph;

import static bywash.rules.husbandry.Sites.day;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.husbandry.Sites;
import bywash.rules.water.CarbonateWater;
import bywash.rules.water.PhDose;
import bywash.rules.water.PhReagent;
import java.time.Duration;
import java.util.SplittableRandom;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PhPlanTest {
    private static final PhPlan.Product BICARBONATE = new PhPlan.Product(PhReagent.POTASSIUM_BICARBONATE, 100);

    @Test
    void oneStepADayEachFollowedByATest() {
        CarbonateWater water = CarbonateWater.ofAlkalinity(22, 6.1, 25);
        PhPlan plan =
                PhPlan.of(water, 6.8, BICARBONATE, 2460, day(1), Sites.site().mains());
        assertEquals(4, plan.steps().size());
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            PhPlan.Step step = plan.steps().get(i);
            assertEquals(day(1 + i), step.doseAt());
            assertEquals(Duration.ofHours(2), Duration.between(step.doseAt(), step.testAt()));
            assertTrue(step.toPh() - step.fromPh() <= PhPlan.LARGEST_STEP + 1e-9);
            sum += step.productG();
        }
        assertEquals(plan.productG(), sum, 1e-9);
        assertEquals(6.8, plan.steps().get(3).toPh(), 1e-9);
        assertTrue(plan.cautions().contains("eye protection"));
    }

    @Test
    @DisplayName("the steps together are the dose in one, whose chemistry is checked against PHREEQC (CarbonateTest)")
    void theStepsAddUpToTheWholeDose() {
        CarbonateWater water = CarbonateWater.ofAlkalinity(22, 6.1, 25);
        PhPlan plan =
                PhPlan.of(water, 6.8, BICARBONATE, 2460, day(1), Sites.site().mains());
        double whole =
                PhDose.closed(water, PhReagent.POTASSIUM_BICARBONATE, 6.8).grams(PhReagent.POTASSIUM_BICARBONATE, 2460);
        assertEquals(whole, plan.productG(), 1e-6 * whole);
    }

    @Test
    void whatTheReagentCannotDoIsRefusedWithTheReason() {
        CarbonateWater water = CarbonateWater.ofAlkalinity(22, 7.2, 80);
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class,
                () -> PhPlan.of(
                        water, 6.6, BICARBONATE, 2460, day(1), Sites.site().mains()));
        assertTrue(String.valueOf(refused.getMessage()).contains("potassium-bicarbonate"));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    @DisplayName("the pH of a mixture is the root of its charge balance (Hipparchus Brent)")
    void mixtureAgrees(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 50; i++) {
            CarbonateWater a = CarbonateWater.ofAlkalinity(22, random.nextDouble(5.8, 7.2), random.nextDouble(15, 80));
            CarbonateWater b = CarbonateWater.ofAlkalinity(11, random.nextDouble(7.2, 8.4), random.nextDouble(80, 250));
            double share = random.nextDouble();
            CarbonateWater mixed = MixedWater.of(a, b, share);
            double carbon = a.totalCarbonMmolL() * (1 - share) + b.totalCarbonMmolL() * share;
            double alkalinity = a.alkalinityMgL() * (1 - share) + b.alkalinityMgL() * share;
            double t = 22 - 11 * share;
            double root = new BrentSolver(1e-12)
                    .solve(200, ph -> new CarbonateWater(t, ph, carbon).alkalinityMgL() - alkalinity, 4, 11);
            assertEquals(root, mixed.ph(), 1e-9);
            assertEquals(t, mixed.temperatureC(), 1e-9);
        }
    }

    @Test
    void nothingMixedInChangesNothingAndAllOfItIsTheOther() {
        CarbonateWater a = CarbonateWater.ofAlkalinity(22, 6.4, 40);
        CarbonateWater b = CarbonateWater.ofAlkalinity(11, 7.9, 120);
        assertEquals(6.4, MixedWater.of(a, b, 0).ph(), 1e-9);
        assertEquals(7.9, MixedWater.of(a, b, 1).ph(), 1e-9);
    }

    @Test
    @DisplayName("6.53 worked out apart in Python 3.11 from the same published constants")
    void saysWhatMainsWaterWillDo() {
        String words = PhPlan.mains(
                CarbonateWater.ofAlkalinity(22, 6.4, 40), Sites.site().mains());
        assertEquals(
                "A tenth of mains water (pH 7.9, alkalinity 120 mg/L) would move the pH from 6.40 to 6.53 and the alkalinity from 40 to"
                        + " 48 mg/L before any air gets at it, and cool the water by 1.1 Cel. Its disinfectant must be gone first.",
                words);
    }
}
