package bywash.rules.water;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

final class FeedRateTest {
    /**
     * C. Somerville and others, 2014, FAO Fisheries and Aquaculture Technical Paper 589, on balancing fish and plants, read in a
     * public copy: 40 to 50 g of feed a square metre for leafy greens, 50 to 80 g for fruiting vegetables.
     */
    @Test
    void theFeedRateRatioIsThatOfThePaper() {
        assertEquals(new FeedRate.Range(40, 50), FeedRate.byBedArea(1, FeedRate.Crop.LEAFY));
        assertEquals(new FeedRate.Range(50, 80), FeedRate.byBedArea(1, FeedRate.Crop.FRUITING));
    }

    /** The same, chapter 7, water quality for fish: a fish of 100 g eats 1 to 2 g a day at 1 to 2 % of its weight. */
    @Test
    void aFishOfAHundredGramsEatsAGramOrTwo() {
        assertEquals(1, FeedRate.byBodyWeightGPerDay(0.1, 1), 1e-12);
        assertEquals(2, FeedRate.byBodyWeightGPerDay(0.1, 2), 1e-12);
    }
}
