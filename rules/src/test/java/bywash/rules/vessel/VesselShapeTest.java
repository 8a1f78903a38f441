package bywash.rules.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.published.PublishedTable;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class VesselShapeTest {

    @Test
    @DisplayName("volumes equal numerical quadrature of the section (SciPy), 1e-6 relative")
    void volumesEqualQuadrature() {
        int checked = 0;
        for (PublishedTable.Row row : PublishedTable.read("tank_geometry", 32).rows()) {
            VesselShape shape = switch (row.text("shape")) {
                case "horizontal_cylinder" -> new HorizontalCylinder(1000, 2000);
                case "vertical_cylinder" -> new VerticalCylinder(1200, 900);
                case "cone_bottom_cylinder" -> new ConeBottom(1200, 400, 1200);
                case "cone_frustum" -> new Frustum(800, 1100, 600);
                default -> null;
            };
            if (shape != null) {
                double depthMm = row.number("depth_m") * 1000;
                row.nearShare("V_closed_L", shape.volumeL(depthMm), 1e-6);
                row.nearShare("V_quad_L", shape.volumeL(depthMm), 1e-6);
                checked++;
            }
        }
        assertEquals(19, checked, "rows for the shapes that a site file can name");
    }

    @Test
    @DisplayName("a drum on its side follows the handbook fractions [from memory], 2e-6")
    void drumFollowsHandbook() {
        PublishedTable table =
                PublishedTable.read("horizontal_cylinder_fraction", 51).markedFromMemory();
        HorizontalCylinder drum = new HorizontalCylinder(1000, 2000);
        for (PublishedTable.Row row : table.rows()) {
            double fraction = drum.volumeL(row.number("h_over_D") * 1000) / drum.capacityL();
            row.near("fraction", fraction, 2e-6);
            if (row.has("handbook")) {
                row.near("handbook", fraction, 2e-6);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void depthAndVolumeAreInverse(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (VesselShape shape : shapes(random)) {
            for (int i = 0; i <= 50; i++) {
                double depth = shape.heightMm() * (i / 50.0);
                double volume = shape.volumeL(depth);
                double back = shape.volumeL(shape.depthMm(volume));
                assertEquals(volume, back, 1e-9 * shape.capacityL(), shape + " at " + depth);
            }
            assertEquals(shape.capacityL(), shape.volumeL(shape.heightMm()), 1e-9 * shape.capacityL());
            assertEquals(0, shape.volumeL(0), 0);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {11, 12, 13, 14, 15, 16})
    void volumeRisesAndAreaIsItsSlope(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (VesselShape shape : shapes(random)) {
            double before = -1;
            for (int i = 0; i < 400; i++) {
                double depth = shape.heightMm() * (i + 0.5) / 400;
                double step = shape.heightMm() * 1e-6;
                double volume = shape.volumeL(depth);
                assertTrue(volume > before, shape + " rises at " + depth);
                before = volume;
                double slope = (shape.volumeL(depth + step) - shape.volumeL(depth - step)) / (2 * step);
                double scale = shape.capacityL() / shape.heightMm();
                assertEquals(slope, shape.areaM2(depth), 1e-4 * scale, shape + " at " + depth);
            }
        }
    }

    @Test
    void strappingTablePassesThroughItsRowsAndIsExactForABox() {
        StrappingTable odd = new StrappingTable(List.of(row(0, 0), row(100, 5), row(130, 90), row(400, 91)));
        for (StrappingTable.Row row : odd.rows()) {
            assertEquals(row.volumeL(), odd.volumeL(row.depthMm()), 0);
        }
        StrappingTable box = new StrappingTable(List.of(row(0, 0), row(70, 70), row(350, 350), row(500, 500)));
        assertEquals(123.4, box.volumeL(123.4), 1e-10);
        assertEquals(1.0, box.areaM2(400), 1e-12);
    }

    @Test
    void depthOutsideTheVesselIsRefusedWithTheRange() {
        for (VesselShape shape : shapes(new SplittableRandom(1))) {
            for (double depth : new double[] {-0.001, shape.heightMm() * 1.001, Double.NaN}) {
                String message = assertThrows(IllegalArgumentException.class, () -> shape.volumeL(depth))
                        .getMessage();
                assertEquals("depthMm is " + depth + "; it must be from 0 to " + shape.heightMm(), message);
                assertThrows(IllegalArgumentException.class, () -> shape.areaM2(depth));
            }
            double tooMuch = shape.capacityL() * 1.001;
            assertThrows(IllegalArgumentException.class, () -> shape.depthMm(tooMuch));
            assertThrows(IllegalArgumentException.class, () -> shape.depthMm(Double.NaN));
        }
    }

    @Test
    void sizesThatMakeNoVesselAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Box(0, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new VerticalCylinder(Double.NaN, 1));
        assertThrows(IllegalArgumentException.class, () -> new ConeBottom(100, 50, 40));
        assertThrows(IllegalArgumentException.class, () -> new StrappingTable(List.of(row(0, 0))));
        assertThrows(IllegalArgumentException.class, () -> new StrappingTable(List.of(row(1, 0), row(2, 3))));
        assertThrows(
                IllegalArgumentException.class, () -> new StrappingTable(List.of(row(0, 0), row(2, 3), row(3, 3))));
    }

    @Test
    void everyShapeHasItsOwnWord() {
        String words = shapes(new SplittableRandom(1)).stream()
                .map(shape -> shape.kind().word())
                .collect(Collectors.joining(" "));
        assertEquals("box vertical-cylinder horizontal-cylinder cone-bottom frustum strapping-table", words);
        assertEquals(
                Kind.values().length, Stream.of(words.split(" ")).distinct().count());
    }

    private static StrappingTable.Row row(double depthMm, double volumeL) {
        return new StrappingTable.Row(depthMm, volumeL);
    }

    private static List<VesselShape> shapes(SplittableRandom random) {
        List<StrappingTable.Row> rows = new ArrayList<>(List.of(row(0, 0)));
        double depth = 0;
        double volume = 0;
        for (int i = 0; i < 8; i++) {
            depth += random.nextDouble(20, 200);
            volume += random.nextDouble(5, 300);
            rows.add(row(depth, volume));
        }
        double cone = random.nextDouble(50, 500);
        return List.of(
                new Box(size(random), size(random), size(random)),
                new VerticalCylinder(size(random), size(random)),
                new HorizontalCylinder(size(random), size(random)),
                new ConeBottom(size(random), cone, cone + random.nextDouble(0, 900)),
                new Frustum(size(random), size(random), size(random)),
                new StrappingTable(rows));
    }

    private static double size(SplittableRandom random) {
        return random.nextDouble(100, 3000);
    }
}
