package bywash.rules.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class SentenceTest {
    @Test
    void aValueThatRoundsToZeroHasNoMinus() {
        assertEquals(
                "reserve falls at 0.0 +/- 0.1 L/min",
                Sentence.of("%s falls at %.1f +/- %.1f L/min", "reserve", -0.04, 0.1));
        assertEquals("0.00, 0 and 0.", Sentence.of("%.2f, %.0f and %.0f.", -0.004, -0.4, -0.0));
        assertEquals("moved 0.0 mg/L", Sentence.of("moved %+.1f mg/L", -0.04));
    }

    @Test
    void otherNumbersKeepTheirMinus() {
        assertEquals("-0.05, -1, -0.1 and -10.0", Sentence.of("%.2f, %.0f, %.1f and %.1f", -0.05, -1.0, -0.06, -10.0));
    }

    @Test
    void whatOnlyLooksLikeAMinusStays() {
        assertEquals("bed-0 on 2026-01-0, 6-0.0", Sentence.of("%s on 2026-01-0, 6-0.0", "bed-0"));
    }
}
