package bywash.rules.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FiguresTest {
    @Test
    void roundsAsTheFormatterOfTheLibraryDoes() {
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 20_000; i++) {
            int decimals = random.nextInt(4);
            double value = random.nextBoolean()
                    ? random.nextInt(-2000, 2000) / 8.0
                    : random.nextDouble(-1, 1) * StrictMath.pow(10, random.nextInt(-5, 9));
            assertEquals(Sentence.of("%." + decimals + "f", value), Figures.of(value, decimals), () -> "of " + value);
        }
    }

    @Test
    void writesNoMinusBeforeAZeroAndASignWhereOneIsWanted() {
        assertEquals("0.0", Figures.of(-0.04, 1));
        assertEquals("+0.0", Figures.signed(-0.0, 1));
        assertEquals("+3", Figures.signed(2.5, 0));
        assertEquals("-0.1", Figures.signed(-0.05, 1));
        assertEquals("NaN", Figures.of(Double.NaN, 1));
    }
}
