package bywash.ingest.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.site.Need;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import java.util.List;
import org.junit.jupiter.api.Test;

class SpeciesReaderTest {
    private static final String SITE = """
            name: Test
            id: test
            time-zone: UTC
            vessels:
              tank: {role: fish-tank, volume: 1500 L}
            probes:
              - {id: t, vessel: tank, quantity: temperature, topic: a, payload: number, unit: Cel}
            """;

    private static Site good(String species) {
        SiteFileResult result = SiteFileReader.read(SITE + species, "site.yaml");
        return assertInstanceOf(SiteFileResult.Good.class, result, result.toString())
                .siteFile()
                .site();
    }

    @Test
    void aCustomSpeciesIsAFewLinesAndTheRestIsAsInTheOneNamed() {
        Site site = good("""
                species:
                  jade-perch: {like: nile-tilapia, temperature: {low: 16 Cel, high: 29 Cel}, oxygen: {low: 5 mg/L},
                    chlorine: {high: 10 ug/L}, density: {high: 15 kg/m3}, protein: {low: 30 %, high: 36 %}, source: sheet}
                """);
        Species perch = SpeciesTable.find(site, "jade-perch").orElseThrow();
        assertEquals(16, perch.least(Need.TEMPERATURE), 1e-9);
        assertEquals(29, perch.most(Need.TEMPERATURE), 1e-9);
        assertEquals(5, perch.least(Need.OXYGEN), 1e-9);
        assertEquals(10, perch.most(Need.CHLORINE), 1e-9);
        assertEquals(15, perch.most(Need.DENSITY), 1e-9);
        assertEquals(36, perch.most(Need.PROTEIN), 1e-9);
        assertEquals("sheet", perch.band(Need.OXYGEN).orElseThrow().source());
        assertEquals(2, perch.most(Need.TOTAL_AMMONIA), 1e-9);
        assertEquals(27, perch.least(Need.BEST_TEMPERATURE), 1e-9);
    }

    @Test
    void theSitesOwnSpeciesStandsBeforeTheBuiltInOne() {
        Site site = good("species:\n  nile-tilapia: {like: nile-tilapia, density: {high: 30 kg/m3}}\n");
        assertEquals(30, SpeciesTable.find(site, "nile-tilapia").orElseThrow().most(Need.DENSITY), 1e-9);
        assertEquals(
                20, SpeciesTable.find(good(""), "nile-tilapia").orElseThrow().most(Need.DENSITY), 1e-9);
    }

    @Test
    void everyFaultIsToldWithItsLine() {
        SiteFileResult result = SiteFileReader.read(SITE + """
                species:
                  a: {like: nile-tilapa}
                  b: {oxygen: {low: 5 mg/L}}
                  c: {temperature: {low: 20 Cel, high: 10 Cel}}
                  d: {temperature: {low: 20}, colour: red}
                """, "site.yaml");
        List<String> problems = assertInstanceOf(SiteFileResult.Faulty.class, result).problems().stream()
                .map(p -> p.line() + " " + p.what())
                .toList();
        assertEquals(
                List.of(
                        "9 species a: species \"nile-tilapa\" is not known",
                        "10 species b: like or temperature is missing",
                        "11 species c, temperature: high is not above low",
                        "12 species d: key \"colour\" is not known",
                        "12 species d, temperature: low \"20\" has no unit"),
                problems);
    }
}
