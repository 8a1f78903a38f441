package bywash.rules.water;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.published.PublishedTable;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AmmoniaTest {

    @Test
    @DisplayName("Emerson's share: formula 1e-3; printed table [from memory] 0.5 %; USGS constant 3 % to 30 Cel")
    void shareAgrees() {
        int printed = 0;
        for (PublishedTable.Row row :
                PublishedTable.read("unionised_ammonia", 78).markedFromMemory().rows()) {
            double percent = 100 * UnionisedAmmonia.share(row.number("pH"), row.number("t_C"));
            row.near("pct_emerson", percent, 1e-3 * row.number("pct_emerson") + 5e-6);
            row.near("pKa_emerson", UnionisedAmmonia.pKa(row.number("t_C")), 1e-5);
            if (row.has("pct_printed")) {
                row.nearShare("pct_printed", percent, 0.005);
                printed++;
            }
            if (row.number("t_C") <= 30) {
                row.nearShare("pct_phreeqc", percent, 0.03);
            }
        }
        assertTrue(printed > 0, "rows with a printed value");
    }

    @Test
    @DisplayName("University of Florida FA-16: rows not marked as misprints within 0.00012 + 0.3 %")
    void extensionTableAgrees() {
        int checked = 0;
        for (PublishedTable.Row row :
                PublishedTable.read("unionised_ammonia_published", 112).rows()) {
            double share = UnionisedAmmonia.share(row.number("pH"), row.number("t_C"));
            row.near("fraction_emerson", share, 1e-5);
            if (!row.has("flag")) {
                row.near("fraction_printed", share, 0.00012 + 0.003 * share);
                checked++;
            }
        }
        assertTrue(checked >= 90, "rows not marked: " + checked);
        assertEquals(0.0502, UnionisedAmmonia.unionisedMgL(1.0, 8.0, 24), 5e-5);
    }

    @Test
    @DisplayName("EPA 2013 criteria: equations 1e-6, and the printed two figures")
    void criteriaAgree() {
        for (PublishedTable.Row row : PublishedTable.read("ammonia_criteria_epa2013", 260)
                .markedFromMemory()
                .rows()) {
            double ph = row.number("pH");
            double t = row.number("t_C");
            equation(row, "CMC_onc", AmmoniaCriteria.acuteWithTrout(ph, t));
            equation(row, "CMC_no_onc", AmmoniaCriteria.acuteWithoutTrout(ph, t));
            equation(row, "CCC", AmmoniaCriteria.chronic(ph, t));
            equation(row, "CCC_nomussel_ELS", AmmoniaCriteria.chronicWithoutMussels(ph, t, true));
            equation(row, "CCC_nomussel_noELS", AmmoniaCriteria.chronicWithoutMussels(ph, t, false));
            equation(row, "max4day_2p5xCCC", AmmoniaCriteria.highestFourDays(ph, t));
            equation(row, "CMC_nomussel_no_onc", AmmoniaCriteria.acuteWithoutMusselsOrTrout(ph, t));
            row.near("CMC_onc_2sf", twoFigures(AmmoniaCriteria.acuteWithTrout(ph, t)), 0);
            row.near("CMC_no_onc_2sf", twoFigures(AmmoniaCriteria.acuteWithoutTrout(ph, t)), 0);
            row.near("CCC_2sf", twoFigures(AmmoniaCriteria.chronic(ph, t)), 0);
        }
        assertEquals(17, twoFigures(AmmoniaCriteria.acuteWithTrout(7, 20)), 0);
        assertEquals(1.9, twoFigures(AmmoniaCriteria.chronic(7, 20)), 0);
    }

    @Test
    @DisplayName("SRAC 462: ten of chloride to one of nitrite; 24.728 g of salt in the worked example, 0.1 %")
    void nitriteGuardAgrees() {
        PublishedTable table = PublishedTable.read("feed_nitrogen", 32);
        assertEquals(20, NitriteGuard.chlorideNeededMgL(2), 0);
        table.rows().get(18).nearShare("value", NitriteGuard.saltG(2, 5, 1000), 1e-3);
        assertEquals(0, NitriteGuard.saltG(2, 25, 1000), 0);
        table.rows().get(12).nearShare("value", NitriteGuard.asNo2MgL(1), 1e-3);
        assertThrows(IllegalArgumentException.class, () -> NitriteGuard.saltG(2, -1, 1000));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void shareRisesAndCriteriaFallWithPhAndHeat(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 300; i++) {
            double ph = random.nextDouble(6.5, 8.9);
            double t = random.nextDouble(0, 29);
            assertTrue(UnionisedAmmonia.share(ph + 0.1, t) > UnionisedAmmonia.share(ph, t));
            assertTrue(UnionisedAmmonia.share(ph, t + 1) > UnionisedAmmonia.share(ph, t));
            assertTrue(AmmoniaCriteria.chronic(ph + 0.1, t) < AmmoniaCriteria.chronic(ph, t));
            assertTrue(AmmoniaCriteria.chronic(ph, t + 1) <= AmmoniaCriteria.chronic(ph, t));
            assertTrue(AmmoniaCriteria.acuteWithTrout(ph, t) <= AmmoniaCriteria.acuteWithoutTrout(ph, t) + 1e-12);
            assertTrue(AmmoniaCriteria.chronic(ph, t) < AmmoniaCriteria.acuteWithTrout(ph, t));
        }
    }

    @Test
    void outOfRangeIsRefusedWithTheRange() {
        assertEquals(
                "pH is 6.4; it must be from 6.5 to 9",
                assertThrows(IllegalArgumentException.class, () -> AmmoniaCriteria.chronic(6.4, 20))
                        .getMessage());
        assertThrows(IllegalArgumentException.class, () -> AmmoniaCriteria.acuteWithTrout(7, 31));
        assertThrows(IllegalArgumentException.class, () -> UnionisedAmmonia.share(12, 20));
        assertThrows(IllegalArgumentException.class, () -> UnionisedAmmonia.unionisedMgL(-1, 7, 20));
    }

    private static void equation(PublishedTable.Row row, String column, double value) {
        row.near(column, value, 1e-6 * value + 5e-7);
    }

    private static double twoFigures(double value) {
        return new BigDecimal(value).round(new MathContext(2)).doubleValue();
    }
}
