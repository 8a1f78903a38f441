package bywash.rules.husbandry.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.published.PublishedTable;
import bywash.rules.site.Band;
import bywash.rules.site.Need;
import bywash.rules.site.Species;
import bywash.rules.site.SpeciesBand;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class SpeciesTableTest {
    private static final String GROUP = "FAO 589 (2014) table 3.1";

    @Test
    @DisplayName("figures that cite FAO 589 table 3.1 are those of the table, warm- and cold-water fish")
    void figuresOfTheGroupAreThoseOfTheTable() {
        PublishedTable table = PublishedTable.read("tolerance_ranges", 5);
        int checked = 0;
        for (Species species : SpeciesTable.builtIn()) {
            PublishedTable.Row row = table.rows().get(species.id().equals("rainbow-trout") ? 1 : 0);
            for (SpeciesBand band : species.bands()) {
                if (band.source().startsWith(GROUP)) {
                    assertHeld(species.id() + " " + band.need(), row, band.need(), band.band());
                    checked++;
                }
            }
        }
        assertTrue(checked >= 17, checked + " figures checked");
    }

    private static void assertHeld(String what, PublishedTable.Row row, Need need, Band band) {
        switch (need) {
            case PH -> assertEquals(row.text("pH"), plain(band.low()) + "-" + plain(band.high()), what);
            case TEMPERATURE -> assertEquals(row.text("temp_C"), plain(band.low()) + "-" + plain(band.high()), what);
            case NITRITE -> assertEquals(row.text("nitrite_mgL"), "<" + plain(band.high()), what);
            case NITRATE -> assertEquals(row.text("nitrate_mgL"), "<" + plain(band.high()), what);
            case OXYGEN -> assertTrue(row.text("DO_mgL").startsWith(plain(band.low()) + "-"), what);
            default -> throw new AssertionError(what + " is not in the table");
        }
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }

    @Test
    void everyFigureHasASourceAndNoSpeciesAChlorineLimitThatIsTheGeneralOne() {
        for (Species species : SpeciesTable.builtIn()) {
            assertTrue(species.bands().stream().noneMatch(b -> b.source().isBlank()), species.id());
            assertTrue(species.band(Need.CHLORINE).isEmpty(), species.id());
        }
    }

    @Test
    @DisplayName("feed conversion is feed given / growth: FAO 589 section 7.2, read in a public copy")
    void conversionIsFeedOverGrowth() {
        FeedConversion ratio = new FeedConversion(1500, 1000, 200);
        assertEquals(1.5, ratio.economic(), 1e-12);
        assertEquals(1.25, ratio.biological(), 1e-12);
        assertTrue(Double.isNaN(new FeedConversion(0, 1000, 0).economic()));
    }

    @Test
    @DisplayName("density against a guide of 20 kg/m3 (FAO 589: 10 to 20 for small sites [from memory])")
    void densityIsMassOverTheWaterOfTheTank() {
        Density within = Density.of(new MassEstimate(20_000, 25_000, 29_000, ""), 1500, 20, "FAO 589");
        assertEquals(25.0 / 1.5, within.kgM3(), 1e-9);
        assertEquals(29.0 / 1.5, within.highKgM3(), 1e-9);
        assertTrue(within.words().endsWith("within the guide"), within.words());
        Density over = Density.of(new MassEstimate(30_000, 31_000, 33_000, ""), 1500, 20, "FAO 589");
        assertTrue(over.overGuide());
    }
}
