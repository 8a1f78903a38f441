package bywash.ingest.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import bywash.rules.site.Vessel;
import bywash.rules.vessel.ConeBottom;
import bywash.rules.vessel.Frustum;
import bywash.rules.vessel.HorizontalCylinder;
import bywash.rules.vessel.StrappingTable;
import bywash.rules.vessel.VerticalCylinder;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShapeReaderTest {
    private static String site(String shape) {
        return """
                name: Test
                id: test
                time-zone: UTC
                vessels:
                  a: {role: sump, shape: {%s}}
                probes:
                  - {id: l, vessel: a, quantity: level, topic: t, payload: number, unit: mm}
                """.formatted(shape);
    }

    private static Vessel vessel(String shape) {
        SiteFileResult result = SiteFileReader.read(site(shape), "site.yaml");
        return assertInstanceOf(SiteFileResult.Good.class, result, result.toString())
                .siteFile()
                .site()
                .vessels()
                .get(0);
    }

    @Test
    void readsEveryKind() {
        assertEquals(
                new VerticalCylinder(1100, 1200),
                vessel("kind: vertical-cylinder, diameter: 1.1 m, height: 1200 mm")
                        .shape());
        assertEquals(
                new HorizontalCylinder(1000, 2000),
                vessel("kind: horizontal-cylinder, diameter: 1 m, length: 2 m").shape());
        assertEquals(
                new ConeBottom(1000, 300, 1500),
                vessel("kind: cone-bottom, diameter: 1 m, cone-height: 30 cm, height: 1.5 m")
                        .shape());
        assertEquals(
                new Frustum(800, 1000, 900),
                vessel("kind: frustum, bottom-diameter: 0.8 m, top-diameter: 1 m, height: 90 cm")
                        .shape());
        assertEquals(
                new StrappingTable(List.of(
                        new StrappingTable.Row(0, 0),
                        new StrappingTable.Row(100, 52),
                        new StrappingTable.Row(300, 180))),
                vessel("kind: strapping-table, table: [{depth: 0 mm, volume: 0 L}, {depth: 10 cm, volume: 52 L}, "
                                + "{depth: 0.3 m, volume: 0.18 m3}]")
                        .shape());
    }

    @Test
    void withoutAnOverflowTheRimIsOne() {
        assertEquals(
                1200,
                vessel("kind: vertical-cylinder, diameter: 1.1 m, height: 1200 mm")
                        .overflowMm());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "kind: sphere| kind \"sphere\" is not known; box, vertical-cylinder, horizontal-cylinder, cone-bottom, frustum or "
                        + "strapping-table",
                "diameter: 1 m| kind is missing; box, vertical-cylinder, horizontal-cylinder, cone-bottom, frustum or strapping-table",
                "kind: vertical-cylinder, diameter: 1 m| height is missing; height: with a length in m, cm, mm, in or ft",
                "kind: vertical-cylinder, diameter: 1 m, height: 1 m, width: 1 m| key \"width\" is not known; "
                        + "kind, diameter or height",
                "kind: cone-bottom, diameter: 1 m, cone-height: 2 m, height: 1.5 m| cone-height is not below the height; "
                        + "cone-height below height, which includes it",
                "'kind: strapping-table, table: [{depth: 0 mm, volume: 0 L}]'| table is not a list of two rows or more; "
                        + "table: [{depth: 0 mm, volume: 0 L}, {depth: 100 mm, volume: 52 L}]",
                "'kind: strapping-table, table: [{depth: 0 mm, volume: 0 L}, {depth: 5 mm, volume: 0 L}]'| depths and volumes do "
                        + "not rise from zero row by row; table: [{depth: 0 mm, volume: 0 L}, {depth: 100 mm, volume: 52 L}]"
            })
    void saysWhatIsWrongWithAShape(String shape, String message) {
        assertEquals(List.of("site.yaml:5: shape of a: " + message), SiteFileReaderTest.faults(site(shape)));
    }
}
