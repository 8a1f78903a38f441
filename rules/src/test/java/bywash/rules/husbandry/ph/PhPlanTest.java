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

    private static Loop loop(CarbonateWater water) {
        return new Loop(water, 2460, true, -8, Sites.site().mains());
    }

    @Test
    void oneStepADayEachFollowedByATest() {
        CarbonateWater water = CarbonateWater.ofAlkalinity(22, 6.1, 25);
        PhPlan plan = PhPlan.of(loop(water), 6.8, BICARBONATE, day(1));
        assertEquals(4, plan.steps().size());
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            PhPlan.Step step = plan.steps().get(i);
            assertEquals(day(1 + i), step.doseAt());
            assertEquals(Duration.ofHours(2), Duration.between(step.doseAt(), step.testAt()));
            assertTrue(step.toPh() - step.fromPh() <= Loop.STEP_WITH_FISH + 1e-9);
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
        PhPlan plan = PhPlan.of(loop(water), 6.8, BICARBONATE, day(1));
        double whole =
                PhDose.closed(water, PhReagent.POTASSIUM_BICARBONATE, 6.8).grams(PhReagent.POTASSIUM_BICARBONATE, 2460);
        assertEquals(whole, plan.productG(), 1e-6 * whole);
    }

    @Test
    void whatTheReagentCannotDoIsRefusedWithTheReason() {
        CarbonateWater water = CarbonateWater.ofAlkalinity(22, 7.2, 80);
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> PhPlan.of(loop(water), 6.6, BICARBONATE, day(1)));
        assertTrue(String.valueOf(refused.getMessage()).contains("potassium bicarbonate"));
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
                        + " 48 mg/L before any air gets at it, and cool the water by 1.1 C. Its disinfectant must be gone first.",
                words);
    }

    @Test
    @DisplayName(
            "alkalinity that must go: the root of the charge balance with carbon, or carbon dioxide, held (Hipparchus Brent)")
    void nitrifyingLowersThePhBetweenTwoBounds() {
        CarbonateWater water = CarbonateWater.ofAlkalinity(22, 7.4, 90);
        NitrifyingFall fall = NitrifyingFall.of(water, 6.8, -8);
        double closed = new BrentSolver(1e-12).solve(200, alk -> phOf(alk, water.totalCarbonMmolL()) - 6.8, 20, 90);
        double open = new BrentSolver(1e-12)
                .solve(200, alk -> CarbonateWater.ofCo2(22, alk, water.co2MgL()).ph() - 6.8, 5, 90);
        assertEquals(closed, fall.closedMgL(), 1e-6);
        assertEquals(open, fall.openMgL(), 1e-6);
        assertEquals((90 - closed) / 8, fall.leastDays(), 1e-6);
        assertEquals((90 - open) / 8, fall.mostDays(), 1e-6);
        assertTrue(fall.leastDays() < fall.mostDays());
    }

    private static double phOf(double alkalinity, double carbon) {
        return new BrentSolver(1e-12)
                .solve(200, ph -> new CarbonateWater(22, ph, carbon).alkalinityMgL() - alkalinity, 4.5, 10);
    }

    @Test
    void waitingForTheBacteriaIsPlannedInDatedStepsAndOnlyDown() {
        CarbonateWater water = CarbonateWater.ofAlkalinity(22, 7.4, 90);
        PhPlan plan = PhPlan.byNitrification(loop(water), 6.8, day(1));
        assertEquals(3, plan.steps().size());
        assertEquals(0, plan.productG(), 0);
        assertTrue(plan.steps().get(2).doseAt().isAfter(plan.steps().get(1).doseAt()));
        assertTrue(plan.after().startsWith("2 to 9 days at the feed of the last week"), plan.after());
        assertThrows(IllegalArgumentException.class, () -> PhPlan.byNitrification(loop(water), 7.6, day(1)));
        Loop unfed = new Loop(water, 2460, true, Double.NaN, Sites.site().mains());
        IllegalArgumentException e =
                assertThrows(IllegalArgumentException.class, () -> PhPlan.byNitrification(unfed, 6.8, day(1)));
        assertTrue(String.valueOf(e.getMessage()).startsWith("no feed is on record"));
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"potassium-bicarbonate", "potassium-carbonate", "calcium-hydroxide", "calcium-carbonate"})
    void everyBaseTakesItUpAndEveryAcidDown(String base) {
        CarbonateWater water = CarbonateWater.ofAlkalinity(22, 6.2, 30);
        PhReagent reagent = PhReagent.of(base).orElseThrow();
        PhPlan up = PhPlan.of(loop(water), 6.8, new PhPlan.Product(reagent, 100), day(1));
        assertEquals(3, up.steps().size());
        assertTrue(up.steps().stream().allMatch(s -> s.productG() > 0 && s.toPh() - s.fromPh() <= 0.2 + 1e-9));
        CarbonateWater hard = CarbonateWater.ofAlkalinity(22, 7.6, 150);
        for (String acid : new String[] {"phosphoric-acid", "nitric-acid", "hydrochloric-acid", "sulfuric-acid"}) {
            PhPlan down = PhPlan.of(
                    loop(hard), 7.0, new PhPlan.Product(PhReagent.of(acid).orElseThrow(), 60), day(1));
            assertEquals(3, down.steps().size());
            assertTrue(down.cautions().startsWith("Gloves and eye protection. Add acid to water"));
            assertTrue(down.after().startsWith("As air brings the carbon dioxide back"), down.after());
        }
    }

    @Test
    @DisplayName(
            "strong acids are worth their protons: 36.46 g HCl, 63.01 g HNO3 and 49.04 g H2SO4 an equivalent (IUPAC weights)")
    void anEquivalentOfStrongAcidWeighsWhatItShould() {
        CarbonateWater hard = CarbonateWater.ofAlkalinity(22, 7.6, 150);
        double[] grams = new double[3];
        String[] acids = {"hydrochloric-acid", "nitric-acid", "sulfuric-acid"};
        for (int i = 0; i < 3; i++) {
            PhPlan.Product product = new PhPlan.Product(PhReagent.of(acids[i]).orElseThrow(), 100);
            grams[i] = PhPlan.of(loop(hard), 7.0, product, day(1)).productG();
        }
        assertEquals(63.012 / 36.458, grams[1] / grams[0], 1e-3);
        assertEquals(49.038 / 36.458, grams[2] / grams[0], 1e-3);
    }

    @Test
    void withoutFishADayMayBringMore() {
        Loop fishless = new Loop(
                CarbonateWater.ofAlkalinity(22, 6.0, 20),
                2460,
                false,
                -8,
                Sites.site().mains());
        assertEquals(2, PhPlan.of(fishless, 6.8, BICARBONATE, day(1)).steps().size());
    }
}
