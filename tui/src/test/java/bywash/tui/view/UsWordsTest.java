package bywash.tui.view;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.rules.site.Units;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Factors by definition: pound 453.59237 g, gallon 3.785411784 L, foot 0.3048 m (NIST Handbook 44, appendix C, from memory). */
final class UsWordsTest {
    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            53 to 105 g of feed a day for the fish | 1.9 to 3.7 oz of feed a day for the fish
            74 fish of 173 g, 1 to 2 % of 12.8 kg, 82 % of it at 25.2 C | 74 fish of 6.1 oz, 1 to 2 % of 28.2 lb, 82 % of it at 77.4 F
            82 g a fish (75 to 90): weighed | 2.9 oz a fish (2.6 to 3.2): weighed
            8.5 kg/m3, guide 20: within the guide | 0.07 lb/gal, guide 0.17: within the guide
            bed-1 (1.2 m2 of lettuce) | bed-1 (12.9 ft2 of lettuce)
            160 L of water at 4.1 L/min | 42 gal of water at 1.1 gal/min
            cool the water by 1.4 C | cool the water by 2.5 F
            4.4 g of ammonia nitrogen, 95 to 188 g of oxygen | 4.4 g of ammonia nitrogen, 95 to 188 g of oxygen
            61.9 g, pH 6.31 to 6.47, alkalinity 51 mg/L after | 61.9 g, pH 6.31 to 6.47, alkalinity 51 mg/L after
            11.8 g of ammonium chloride, pure, or 60.4 g of pellets | 11.8 g of ammonium chloride, pure, or 2.1 oz of pellets
            the beds take 0.24 to 0.48 g of N a day | the beds take 0.24 to 0.48 g of N a day
            uses 19.1 g a day as CaCO3, 9.9 mg/L a day | uses 19.1 g a day as CaCO3, 9.9 mg/L a day
            drifted +0.40 C in 30 d, +0.20 C a month | drifted +0.72 F in 30 d, +0.36 F a month
            temperature in fish-tank moves 2.5 C an hour | temperature in fish-tank moves 4.5 F an hour
            only if it is within 2 C of 21.0 C | only if it is within 3.6 F of 69.8 F
            temperature in fish-tank is 9.50 C, below 12.00 C | temperature in fish-tank is 49.1 F, below 53.6 F
            Beyond noise and cycles: +4.1 +/- 0.6 L/min | Beyond noise and cycles: +1.1 +/- 0.2 gal/min
            entering sump from outside: 0.8 L/min, 33 L so far | entering sump from outside: 0.21 gal/min, 8.7 gal so far
            33 L came in, system holds 2140 L (1964 to 2251) | 8.7 gal came in, system holds 565 gal (519 to 595)
            160 L (150 to 170 L) came in | 42 gal (40 to 45 gal) came in
            sump has 51 mm of freeboard left | sump has 2.0 in of freeboard left
            2.1 g sodium thiosulfate (crystals, pentahydrate) or 5.0 g ascorbic acid | 2.1 g sodium thiosulfate (crystals, pentahydrate) or 5.0 g ascorbic acid
            0.9 mg/L in 2333 L. It passes 19 ug/L | 0.9 mg/L in 616 gal. It passes 19 ug/L
            fed on 2026-04-14; 37 g of feed a fish since | fed on 2026-04-14; 1.3 oz of feed a fish since
            """)
    void fishFeedAndBedsChangeTheirUnitAndChemicalsKeepIt(String metric, String us) {
        assertEquals(us, UsWords.of(metric, Units.US));
        assertEquals(metric, UsWords.of(metric, Units.METRIC));
    }

    @Test
    @DisplayName("12.8 kg in 1500 L is 28.22 lb in 396.3 gal, 0.0712 lb/gal, worked out by hand")
    void stockUnitsAgreeWithTheWords() {
        StockUnits us = new StockUnits(Units.US);
        assertEquals("28.2 lb", us.bulk(12_800));
        assertEquals("0.07 lb/gal", us.density(12.8 / 1.5));
        assertEquals("6.1 oz", us.mass(173));
        assertEquals("12.9 ft2", us.area(1.2));
        assertEquals(173, us.grams(us.massValue(173)), 1e-9);
        assertEquals(1.2, us.squareMetres(us.areaValue(1.2)), 1e-12);
    }
}
