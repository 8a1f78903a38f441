package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.site.Disinfectant;
import bywash.rules.water.LossRate;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class TreatmentTest {
    @Test
    @DisplayName(
            "1 g of thiosulfate: planned as pentahydrate, a mole a mole (248.18 / 70.90); at most anhydrous, four (158.11)")
    void thiosulfateMayRemoveFarMoreThanPlanned() {
        Litres removes = Treatment.THIOSULFATE.removesMg(1);
        assertEquals(1000 * 70.90 / 248.18, removes.likelyL(), 0.1);
        assertEquals(0.9 * 1000 * 70.90 / 248.18, removes.lowL(), 0.1);
        assertEquals(4 * 1000 * 70.90 / 158.11, removes.highL(), 0.5);
    }

    @Test
    @DisplayName("1 g of ascorbic acid: a mole a mole (176.12 / 70.90), never more")
    void ascorbicAcidRemovesWhatIsPlannedAtMost() {
        Litres removes = Treatment.ASCORBIC_ACID.removesMg(1);
        assertEquals(1000 * 70.90 / 176.12, removes.likelyL(), 0.1);
        assertEquals(removes.likelyL(), removes.highL(), 0);
    }

    @ParameterizedTest
    @EnumSource
    void withoutAChemicalOrItsAmountNothingIsRemovedAtOnce(Treatment treatment) {
        assertEquals(Litres.of(0), treatment.removesMg(Double.NaN));
        assertEquals(treatment.chemical(), treatment.removesMg(1).likelyL() > 0);
    }

    @ParameterizedTest
    @EnumSource
    void chloramineIsLostNoFasterThanChlorine(Treatment treatment) {
        LossRate chlorine = treatment.rate(Disinfectant.CHLORINE);
        LossRate chloramine = treatment.rate(Disinfectant.CHLORAMINE);
        assertTrue(chloramine.lowPerHour() < chlorine.lowPerHour());
        assertTrue(chloramine.likelyPerHour() < chlorine.likelyPerHour());
        assertEquals(new LossRate(0, 0, 0), treatment.rate(Disinfectant.NONE));
    }

    @ParameterizedTest
    @EnumSource
    void onlyCarbonAndChemicalsRidWaterOfChloramine(Treatment treatment) {
        boolean removes = switch (treatment) {
            case STANDING, AERATED, SUNLIT -> false;
            case CARBON, THIOSULFATE, ASCORBIC_ACID -> true;
        };
        assertEquals(removes, treatment.removesChloramine());
    }

    @ParameterizedTest
    @EnumSource
    void isFoundByItsWord(Treatment treatment) {
        assertEquals(treatment, Treatment.of(treatment.word()).orElseThrow());
        assertFalse(Treatment.of(treatment.word() + "s").isPresent());
    }
}
