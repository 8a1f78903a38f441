package bywash.rules.husbandry.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class FeedConversionTest {
    @Test
    @DisplayName("feed over gain (FAO 589, section 7.2): 1500 g for 1000 g is 1.5; with 200 g of dead fish 1.25")
    void feedOverGain() {
        FeedConversion conversion = new FeedConversion(1500, 1000, 200);
        assertEquals(1.5, conversion.economic(), 1e-12);
        assertEquals(1.25, conversion.biological(), 1e-12);
        assertEquals(1.5, new FeedConversion(0.75, 0.5, 0).economic(), 1e-12, "fry");
        assertEquals(1.5, new FeedConversion(0.75, 0.25, 0.25).biological(), 1e-12, "fry");
    }

    @Test
    void whatDiedIsGainToo() {
        FeedConversion allDead = new FeedConversion(300, 0, 200);
        assertEquals(Double.NaN, allDead.economic());
        assertEquals(1.5, allDead.biological(), 1e-12);
        assertEquals(1.5, new FeedConversion(300, -50, 250).biological(), 1e-12);
    }

    @Test
    void withoutFeedOrGainThereIsNone() {
        assertEquals(Double.NaN, new FeedConversion(0, 100, 0).economic());
        assertEquals(Double.NaN, new FeedConversion(0, 100, 20).biological());
        assertEquals(Double.NaN, new FeedConversion(100, -30, 20).biological());
    }
}
