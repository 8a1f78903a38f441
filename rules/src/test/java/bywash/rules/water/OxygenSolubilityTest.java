package bywash.rules.water;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.published.PublishedTable;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OxygenSolubilityTest {

    @Test
    @DisplayName("the grid agrees with another program (1e-4 mg/L) and with TEOS-10 (0.1 %)")
    void gridAgrees() {
        int teos = 0;
        for (PublishedTable.Row row :
                PublishedTable.read("do_saturation_computed", 1230).rows()) {
            double c = OxygenSolubility.saturationMgL(row.number("t_C"), row.number("S"), row.number("P_atm"));
            row.near("O2_mgL_bk", c, 1e-4);
            if (row.has("O2_mgL_gsw")) {
                row.nearShare("O2_mgL_gsw", c, 1e-3);
                teos++;
            }
        }
        assertEquals(246, teos, "rows with a TEOS-10 value");
    }

    @Test
    @DisplayName("Standard Methods 4500-O [from memory], a textbook, USGS and EPA tables are met at their tolerance")
    void publishedTablesAreMet() {
        for (PublishedTable.Row row : PublishedTable.read("do_saturation_published", 41)
                .markedFromMemory()
                .rows()) {
            double c = OxygenSolubility.saturationMgL(row.number("t_C"), 0, 1);
            row.near("bk_1984", c, 1e-4);
            check(row, "std_methods", c, 0.0015);
            check(row, "chapra", c, 0.0015);
            check(row, "epa_vol_monitoring", c, 0.03);
            check(row, "usgs_760", c, 0.05);
        }
    }

    @Test
    @DisplayName("the pressure factor agrees with Buck's vapour pressure within 0.1 %")
    void pressureFactorAgrees() {
        for (PublishedTable.Row row : PublishedTable.read("pressure_factor", 45).rows()) {
            double factor = OxygenSolubility.pressureFactor(row.number("t_C"), row.number("P_atm"));
            row.near("Fp_bk", factor, 1e-6);
            row.nearShare("Fp_simple", factor, 1e-3);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4})
    void percentRoundTripsAndSaturationFallsWithHeatSaltAndHeight(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 500; i++) {
            double t = random.nextDouble(0, 39);
            double s = random.nextDouble(0, 39);
            double p = random.nextDouble(0.51, 1.1);
            double c = random.nextDouble(0, 3) * OxygenSolubility.saturationMgL(t, s, p);
            double percent = OxygenSolubility.percent(c, t, s, p);
            assertEquals(c, OxygenSolubility.concentrationMgL(percent, t, s, p), 1e-12);
            double here = OxygenSolubility.saturationMgL(t, s, p);
            assertEquals(here - c, OxygenSolubility.deficitMgL(c, t, s, p), 1e-12);
            assertTrue(OxygenSolubility.saturationMgL(t + 1, s, p) < here);
            assertTrue(OxygenSolubility.saturationMgL(t, s + 1, p) < here);
            assertTrue(OxygenSolubility.saturationMgL(t, s, p - 0.01) < here);
        }
    }

    @Test
    @DisplayName(
            "ICAO standard atmosphere [from memory]: 898.75 hPa at 1000 m, 794.95 hPa at 2000 m of geopotential height")
    void pressureFallsWithElevation() {
        assertEquals(1, AirPressure.atmAtElevation(0), 0);
        assertEquals(898.75, AirPressure.atmAtElevation(1000) * 1013.25, 0.02);
        assertEquals(794.95, AirPressure.atmAtElevation(2000) * 1013.25, 0.02);
        assertEquals(1, AirPressure.atmFromHpa(1013.25), 0);
    }

    @Test
    void outOfRangeIsRefusedWithTheRange() {
        String message = assertThrows(IllegalArgumentException.class, () -> OxygenSolubility.saturationMgL(41, 0, 1))
                .getMessage();
        assertEquals("temperature is 41 Cel; it must be from 0 to 40 Cel", message);
        assertThrows(IllegalArgumentException.class, () -> OxygenSolubility.saturationMgL(20, -1, 1));
        assertThrows(IllegalArgumentException.class, () -> OxygenSolubility.saturationMgL(20, 0, 0.4));
        assertThrows(IllegalArgumentException.class, () -> OxygenSolubility.saturationMgL(Double.NaN, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> AirPressure.atmAtElevation(9000));
        assertThrows(IllegalArgumentException.class, () -> AirPressure.atmFromHpa(101325));
    }

    private static void check(PublishedTable.Row row, String column, double value, double tolerance) {
        if (row.has(column)) {
            row.near(column, value, tolerance);
        }
    }
}
