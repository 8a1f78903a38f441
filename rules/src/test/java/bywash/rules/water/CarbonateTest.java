package bywash.rules.water;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.published.PublishedTable;
import java.time.Duration;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CarbonateTest {
    /** The library doses sodium carbonate; a mole of potassium carbonate does the same to the water. */
    private static final double SODIUM_CARBONATE_G_MOL = 105.988;

    private static final Map<String, PhReagent> REAGENTS = Map.of(
            "HCl", PhReagent.HYDROCHLORIC_ACID,
            "NaOH", PhReagent.SODIUM_HYDROXIDE,
            "NaHCO3", PhReagent.SODIUM_BICARBONATE,
            "Ca(OH)2", PhReagent.CALCIUM_HYDROXIDE,
            "Na2CO3", PhReagent.POTASSIUM_CARBONATE);

    @Test
    @DisplayName("constants: Plummer and Busenberg 5e-4; USGS PHREEQC and Millero within 0.02 in pK")
    void constantsAgree() {
        for (PublishedTable.Row row :
                PublishedTable.read("carbonate_constants", 9).rows()) {
            double t = row.number("t_C");
            row.near("logK1_pb", CarbonateConstants.logK1(t), 5e-4);
            row.near("logK2_pb", CarbonateConstants.logK2(t), 5e-4);
            row.near("logKH_pb", CarbonateConstants.logKh(t), 5e-4);
            row.near("logKw_millero", CarbonateConstants.logKw(t), 5e-4);
            row.near("logK1_millero", CarbonateConstants.logK1(t), 0.02);
            row.near("logK2_millero", CarbonateConstants.logK2(t), 0.02);
            row.near("logKH_phreeqc", CarbonateConstants.logKh(t), 0.02);
            row.near("logKw_phreeqc", CarbonateConstants.logKw(t), 0.02);
        }
    }

    @Test
    @DisplayName("CO2 from pH and alkalinity: ideal code 0.01 %; the worst miss from USGS PHREEQC is 8.0 %")
    void carbonDioxideAgrees() {
        double worst = 0;
        for (PublishedTable.Row row : PublishedTable.read("alk_ph_co2", 120).rows()) {
            CarbonateWater water =
                    CarbonateWater.ofAlkalinity(row.number("t_C"), row.number("pH"), row.number("alk_mgL_CaCO3"));
            row.near("CO2_mgL_ideal", water.co2MgL(), 1e-4 * water.co2MgL() + 1e-5);
            row.near("DIC_mmolL_ideal", water.totalCarbonMmolL(), 1e-4 * water.totalCarbonMmolL() + 1e-6);
            worst = Math.max(worst, Math.abs(water.co2MgL() / row.number("CO2_mgL_phreeqc") - 1));
        }
        assertEquals(0.0803, worst, 5e-5);
    }

    @Test
    @DisplayName("pH at rest with air: ideal code 0.01, USGS PHREEQC 0.05")
    void openToAirAgrees() {
        for (PublishedTable.Row row :
                PublishedTable.read("open_air_ph", 96).markedFromMemory().rows()) {
            double ppm = 1e6 * Math.pow(10, row.number("log10_pCO2_atm"));
            double ph = CarbonateWater.openToAir(row.number("t_C"), row.number("alk_mgL_CaCO3"), ppm)
                    .ph();
            row.near("pH_ideal", ph, 0.01);
            row.near("pH_phreeqc", ph, 0.05);
        }
    }

    @Test
    @DisplayName(
            "closed dose: ideal code 0.01 %; the worst miss from USGS PHREEQC is 6.2 % (acid, base), 10.6 % (bicarbonate)")
    void closedDoseAgrees() {
        double worst = 0;
        double worstBicarbonate = 0;
        for (PublishedTable.Row row : PublishedTable.read("ph_dose_closed", 80).rows()) {
            PhReagent reagent = reagent(row.text("reagent"));
            CarbonateWater before =
                    CarbonateWater.ofAlkalinity(row.number("t_C"), row.number("pH_a"), row.number("alk_mgL_CaCO3"));
            PhDose dose = PhDose.closed(before, reagent, row.number("pH_b"));
            row.near("dose_mmol_ideal", dose.mmolL(), 1e-4 * dose.mmolL() + 1e-6);
            double miss = Math.abs(dose.mmolL() / row.number("dose_mmol_kg_phreeqc") - 1);
            if (reagent == PhReagent.SODIUM_BICARBONATE) {
                worstBicarbonate = Math.max(worstBicarbonate, miss);
            } else {
                worst = Math.max(worst, miss);
                row.near("alk_final_meq_phreeqc", dose.after().alkalinityMeqL(), 0.09 * dose.mmolL() + 0.002);
            }
        }
        assertEquals(0.0622, worst, 5e-5);
        assertEquals(0.1062, worstBicarbonate, 5e-5);
    }

    @Test
    @DisplayName("closed dose against a drinking-water chemistry library: 3 % or 0.15 mg/L")
    void closedDoseAgreesWithAnotherLibrary() {
        int checked = 0;
        for (PublishedTable.Row row :
                PublishedTable.read("ph_dose_tidywater", 128).rows()) {
            PhReagent reagent = reagent(row.text("chemical"));
            CarbonateWater before =
                    CarbonateWater.ofAlkalinity(row.number("t_C"), row.number("pH_a"), row.number("alk_mgL_CaCO3"));
            boolean soda = reagent == PhReagent.POTASSIUM_CARBONATE;
            double molarMass = soda ? SODIUM_CARBONATE_G_MOL : reagent.gramsPerMol();
            double mgL = PhDose.closed(before, reagent, row.number("pH_b")).mmolL() * molarMass;
            row.near("dose_mgL", mgL, Math.max(0.15, 0.03 * row.number("dose_mgL")));
            checked++;
        }
        assertEquals(128, checked);
    }

    @Test
    @DisplayName("pH from alkalinity and CO2 equals Hipparchus's root of the charge balance")
    void phEqualsHipparchusRoot() {
        BracketingNthOrderBrentSolver solver = new BracketingNthOrderBrentSolver(1e-12, 5);
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 200; i++) {
            double t = random.nextDouble(0, 40);
            double alk = random.nextDouble(5, 400);
            double co2 = random.nextDouble(0.5, 40);
            double k1 = Math.pow(10, CarbonateConstants.logK1(t));
            double k2 = Math.pow(10, CarbonateConstants.logK2(t));
            double kw = Math.pow(10, CarbonateConstants.logKw(t));
            double ph = solver.solve(
                    1000,
                    x -> {
                        double h = Math.pow(10, -x);
                        return co2 / 44.009e3 * (k1 / h + 2 * k1 * k2 / (h * h)) + kw / h - h - alk / 50.043e3;
                    },
                    4,
                    11);
            assertEquals(ph, CarbonateWater.ofCo2(t, alk, co2).ph(), 2e-5);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void everyReagentBalancesChargeAndPhRoundTrips(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (PhReagent reagent : PhReagent.values()) {
            double t = random.nextDouble(5, 35);
            double alk = random.nextDouble(30, 300);
            double ph = random.nextDouble(6.5, 8.0);
            CarbonateWater before = CarbonateWater.ofAlkalinity(t, ph, alk);
            assertEquals(alk, before.alkalinityMgL(), 1e-9);
            assertEquals(ph, CarbonateWater.ofCo2(t, alk, before.co2MgL()).ph(), 1e-9);
            double target = reagent.isAcid() ? ph - 0.4 : ph + 0.15;
            PhDose dose = PhDose.closed(before, reagent, target);
            double change = dose.after().alkalinityMeqL() - before.alkalinityMeqL();
            assertEquals(dose.mmolL() * reagent.equivalentsPerMol(target), change, 1e-9, reagent.word());
            double carbon = dose.after().totalCarbonMmolL() - before.totalCarbonMmolL();
            assertEquals(dose.mmolL() * reagent.carbonPerMol(), carbon, 1e-9, reagent.word());
        }
    }

    @Test
    @DisplayName(
            "a milliequivalent a litre is 50 mg/L as CaCO3: 84.0 g of sodium bicarbonate in 1000 L, 168.0 g in 2000 L")
    void gramsAreThoseOfTheEquivalents() {
        CarbonateWater before = CarbonateWater.ofAlkalinity(20, 6.6, 40);
        PhDose dose = PhDose.closed(before, PhReagent.SODIUM_BICARBONATE, 6.9);
        double perMeq = 50.04 / (dose.after().alkalinityMgL() - before.alkalinityMgL());
        assertEquals(84.0, dose.grams(PhReagent.SODIUM_BICARBONATE, 1000) * perMeq, 0.1);
        assertEquals(168.0, dose.grams(PhReagent.SODIUM_BICARBONATE, 2000) * perMeq, 0.2);
    }

    @Test
    void stepsAddUpToTheWholeDoseAndNeverExceedTheLargestStep() {
        CarbonateWater before = CarbonateWater.ofAlkalinity(22, 7.9, 120);
        for (PhReagent reagent : new PhReagent[] {PhReagent.HYDROCHLORIC_ACID, PhReagent.NITRIC_ACID}) {
            PhDosePlan plan =
                    PhDosePlan.of(before, 6.8, new PhDosePlan.Method(reagent, 800, 37, 0.2, Duration.ofHours(4)));
            assertEquals(6, plan.steps().size());
            double whole = PhDose.closed(before, reagent, 6.8).grams(reagent, 800) / 0.37;
            assertEquals(whole, plan.totalG(), 1e-9 * whole);
            for (PhDosePlan.Step step : plan.steps()) {
                assertTrue(step.fromPh() - step.toPh() <= 0.2 + 1e-9 && step.productG() > 0);
            }
            assertEquals(6.8, plan.steps().get(5).toPh(), 0);
        }
    }

    @Test
    void openToAirNeedsMoreAcidThanClosed() {
        CarbonateWater before = CarbonateWater.openToAir(20, 100, 420);
        PhDose open = PhDose.open(before, PhReagent.HYDROCHLORIC_ACID, 7.0, 420);
        PhDose closed = PhDose.closed(before, PhReagent.HYDROCHLORIC_ACID, 7.0);
        assertTrue(open.mmolL() > 3 * closed.mmolL());
        assertEquals(
                7.0,
                CarbonateWater.openToAir(20, open.after().alkalinityMgL(), 420).ph(),
                1e-9);
    }

    private static PhReagent reagent(String formula) {
        return Objects.requireNonNull(REAGENTS.get(formula), formula);
    }

    @Test
    void whatCannotBeDoneIsRefused() {
        CarbonateWater water = CarbonateWater.ofAlkalinity(20, 7, 100);
        assertEquals(
                "targetPh is 7.5; hydrochloric acid cannot take this water there from pH 7.0",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> PhDose.closed(water, PhReagent.HYDROCHLORIC_ACID, 7.5))
                        .getMessage());
        assertThrows(IllegalArgumentException.class, () -> PhDose.closed(water, PhReagent.POTASSIUM_BICARBONATE, 9.5));
        assertThrows(IllegalArgumentException.class, () -> CarbonateWater.ofAlkalinity(20, 3, 100));
        assertThrows(IllegalArgumentException.class, () -> CarbonateWater.ofAlkalinity(20, 10.9, 1));
        assertThrows(IllegalArgumentException.class, () -> CarbonateWater.openToAir(20, 100, 10));
        assertThrows(
                IllegalArgumentException.class,
                () -> new PhDosePlan.Method(PhReagent.NITRIC_ACID, 800, 60, 2, Duration.ofHours(1)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new PhDosePlan.Method(PhReagent.NITRIC_ACID, 800, 60, 0.2, Duration.ofMinutes(1)));
    }
}
