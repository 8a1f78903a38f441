package bywash.rules.water;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.published.PublishedTable;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ElectrodeTest {

    @Test
    @DisplayName("Nernst slope with CODATA 2018 constants, 1e-3 mV")
    void slopeAgrees() {
        for (PublishedTable.Row row : PublishedTable.read("nernst_slope", 11).rows()) {
            row.near("slope_mV_per_pH", PhElectrode.idealSlopeMv(row.number("t_C")), 1e-3);
        }
    }

    @Test
    @DisplayName("buffers: NIST/DIN table [from memory] exact; USGS PHREEQC within 0.02 at 15-30 Cel")
    void buffersAgree() {
        for (PublishedTable.Row row :
                PublishedTable.read("ph_buffers", 9).markedFromMemory().rows()) {
            double t = row.number("t_C");
            for (PhBuffer buffer : PhBuffer.values()) {
                row.near("table_" + buffer.word(), buffer.ph(t), 1e-9);
                if (t >= 15 && t <= 30 && buffer != PhBuffer.PHTHALATE) {
                    row.near("phreeqc_" + buffer.word(), buffer.ph(t), 0.02);
                }
            }
        }
        assertEquals(6.859, PhBuffer.PHOSPHATE.ph(27.5), 1e-9);
        assertThrows(IllegalArgumentException.class, () -> PhBuffer.BORAX.ph(41));
    }

    @Test
    @DisplayName("silver chloride against hydrogen: field table [from memory] exact, computed values within 8 mV")
    void referenceElectrodesAgree() {
        for (PublishedTable.Row row :
                PublishedTable.read("agagcl_to_she", 8).markedFromMemory().rows()) {
            double t = row.number("t_C");
            row.near("E0_mV", OrpCheck.silverChlorideStandardMv(t), 0.01);
            row.near("nernst_mV_decade", PhElectrode.idealSlopeMv(t), 1e-3);
            if (t < 10 || t > 35) {
                continue;
            }
            row.near("table_sat_mV", ReferenceElectrode.SATURATED.potentialMv(t), 1e-9);
            row.near("table_3p5M_mV", ReferenceElectrode.KCL_3_5_MOLAR.potentialMv(t), 1e-9);
            row.near("calc_sat_mV", ReferenceElectrode.SATURATED.potentialMv(t), 8);
            row.near("calc_3p5M_mV", ReferenceElectrode.KCL_3_5_MOLAR.potentialMv(t), 8);
            row.near("calc_3M_mV", ReferenceElectrode.KCL_3_MOLAR.potentialMv(t), 1e-9);
            row.near("calc_4M_mV", ReferenceElectrode.KCL_4_MOLAR.potentialMv(t), 1e-9);
        }
    }

    @Test
    @DisplayName("ZoBell's solution, Standard Methods 2580 table I, 1 mV")
    void zobellAgrees() {
        for (PublishedTable.Row row : PublishedTable.read("zobell", 30).rows()) {
            row.near("Eh_std_methods_V", OrpCheck.zobellMv(row.number("t_C")) / 1000, 0.001);
        }
        assertEquals(475, ReferenceElectrode.SATURATED.fromHydrogenMv(OrpCheck.LIGHT_25_MV, 25), 1.01);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4})
    void calibrationFindsSlopeAndOffsetBack(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 100; i++) {
            double t = random.nextDouble(5, 40);
            double share = random.nextDouble(0.91, 1.04);
            double offset = random.nextDouble(-29, 29);
            double slope = share * PhElectrode.idealSlopeMv(t);
            List<PhCalibration.Point> points = new ArrayList<>();
            for (double ph : i % 2 == 0 ? new double[] {4.0, 7.0} : new double[] {4.0, 7.0, 10.0}) {
                points.add(new PhCalibration.Point(ph, offset - slope * (ph - 7)));
            }
            PhCalibration found = PhCalibration.of(points, t);
            assertEquals(100 * share, found.slopePercent(), 1e-9);
            assertEquals(offset, found.offsetMv(), 1e-9);
            assertEquals(0, found.largestMissMv(), 1e-9);
            assertEquals(6.3, found.ph(offset - slope * (6.3 - 7)), 1e-9);
            assertTrue(found.verdict() != PhCalibration.Verdict.FAULTY);
        }
    }

    @Test
    void verdictFollowsSlopeOffsetAndMiss() {
        assertEquals(PhCalibration.Verdict.GOOD, new PhCalibration(58, 98, 3, 0).verdict());
        assertEquals(PhCalibration.Verdict.USABLE, new PhCalibration(55, 93, 3, 0).verdict());
        assertEquals(PhCalibration.Verdict.USABLE, new PhCalibration(58, 98, 3, 5).verdict());
        assertEquals(PhCalibration.Verdict.FAULTY, new PhCalibration(50, 85, 3, 0).verdict());
        assertEquals(PhCalibration.Verdict.FAULTY, new PhCalibration(58, 98, -40, 0).verdict());
        assertThrows(IllegalArgumentException.class, () -> new PhCalibration(-1, -2, 0, 0).ph(0));
    }

    @Test
    void tooFewOrTooCloseBuffersAreRefused() {
        PhCalibration.Point seven = new PhCalibration.Point(7, 0);
        assertEquals(
                "number of points is 1; it must be from 2 to 3",
                assertThrows(IllegalArgumentException.class, () -> PhCalibration.of(List.of(seven), 25))
                        .getMessage());
        assertThrows(
                IllegalArgumentException.class,
                () -> PhCalibration.of(List.of(seven, new PhCalibration.Point(7.2, -10)), 25));
        assertThrows(IllegalArgumentException.class, () -> new PhCalibration.Point(15, 0));
    }
}
