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

class FeedTest {

    @Test
    @DisplayName("ammonia from feed (factor [from memory]) and what nitrifying takes, 0.1 %")
    void nitrogenAgrees() {
        PublishedTable table = PublishedTable.read("feed_nitrogen", 32);
        assertTrue(table.rows().get(0).text("status").startsWith(PublishedTable.FROM_MEMORY));
        near(table, 0, Nitrification.tanGPerDay(1000, 32));
        near(table, 1, Nitrification.tanGPerDay(100, 32));
        near(table, 2, Nitrification.tanGPerDay(100, 40));
        near(table, 3, Nitrification.tanGPerDay(250, 28));
        near(table, 5, Nitrification.OXYGEN_PER_N);
        near(table, 7, Nitrification.ALKALINITY_PER_N);
        near(table, 11, Nitrification.NO3_PER_N);
        assertEquals(4.5689 * 3, Nitrification.oxygenGPerDay(3), 0.01);
        assertEquals(7.1455 * 3, Nitrification.alkalinityGPerDay(3), 0.01);
    }

    @Test
    @DisplayName("feed by body weight and by bed area (FAO 589 [from memory])")
    void feedRates() {
        PublishedTable table = PublishedTable.read("feed_nitrogen", 32);
        FeedRate.Range leafy = FeedRate.byBedArea(1, FeedRate.Crop.LEAFY);
        FeedRate.Range fruiting = FeedRate.byBedArea(1, FeedRate.Crop.FRUITING);
        assertEquals(table.rows().get(19).text("value"), text(leafy));
        assertEquals(table.rows().get(20).text("value"), text(fruiting));
        assertEquals(150, FeedRate.byBodyWeightGPerDay(10, 1.5), 1e-9);
        assertThrows(IllegalArgumentException.class, () -> FeedRate.byBodyWeightGPerDay(10, 11));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void nitrateTendsToItsRestAndItsMassIsConserved(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double taken = random.nextDouble(0, 2);
        NitrateBalance balance = new NitrateBalance(1000, taken + random.nextDouble(0.1, 3), taken, 50);
        double start = random.nextDouble(0, 100);
        assertEquals(balance.atRestMgL(), balance.afterMgL(start, 5000), 1e-9 * balance.atRestMgL());
        double halfway = balance.afterMgL(start, 5);
        assertEquals(balance.afterMgL(start, 10), balance.afterMgL(halfway, 5), 1e-9);
        assertEquals(0, balance.risePerDayMgL(balance.atRestMgL()), 1e-9);
    }

    @Test
    void nitrateWithoutExchangeRisesStraightAndNeverFallsBelowZero() {
        NitrateBalance rising = new NitrateBalance(1000, 3, 1, 0);
        assertEquals(2, rising.risePerDayMgL(10), 1e-12);
        assertEquals(30, rising.afterMgL(10, 10), 1e-12);
        assertEquals(Double.POSITIVE_INFINITY, rising.atRestMgL(), 0);
        NitrateBalance falling = new NitrateBalance(1000, 1, 3, 0);
        assertEquals(0, falling.afterMgL(10, 10), 0);
        assertEquals(0, falling.atRestMgL(), 0);
        assertThrows(IllegalArgumentException.class, () -> new NitrateBalance(0, 1, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> Nitrification.tanGPerDay(100, 5));
    }

    private static String text(FeedRate.Range range) {
        return Math.round(range.lowGPerDay()) + "-" + Math.round(range.highGPerDay());
    }

    private static void near(PublishedTable table, int index, double value) {
        table.rows().get(index).nearShare("value", value, 1e-3);
    }
}
