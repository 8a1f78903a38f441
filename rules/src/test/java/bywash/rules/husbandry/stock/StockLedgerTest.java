package bywash.rules.husbandry.stock;

import static bywash.rules.husbandry.Sites.day;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishLoss;
import bywash.rules.event.OperatorEntry.FishMove;
import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.husbandry.Sites;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class StockLedgerTest {
    private final List<String> remarks = new ArrayList<>();
    private final StockLedger stock = new StockLedger(
            Sites.site(),
            (vessel, from, to) -> 25.0 * Duration.between(from, to).toHours() / 24,
            remarks::add);

    private void book(OperatorEntry... entries) {
        for (OperatorEntry entry : entries) {
            switch (entry.kind()) {
                case FISH_IN -> stock.book((FishIn) entry);
                case WEIGH -> stock.book((Weigh) entry);
                case FISH_LOSS -> stock.book((FishLoss) entry);
                case FISH_MOVE -> stock.book((FishMove) entry);
                case HARVEST -> stock.book((Harvest) entry);
                case FEED -> stock.book((Feed) entry);
                default -> throw new IllegalArgumentException(entry.word() + " is nothing to the fish");
            }
        }
    }

    private CohortStatus only() {
        return stock.status().get(0);
    }

    private static FishIn spring() {
        return new FishIn(day(0), "spring", "nile-tilapia", 60, 40);
    }

    @Test
    void aCohortGrowsOnItsFeedUntilItIsWeighedAndThenItsOwnConversionCounts() {
        book(spring(), new Feed(day(15), 1800, 0.32));
        MassEstimate mean = only().mean();
        assertEquals(40 + 30 / 1.5, mean.likelyG(), 1e-9);
        assertEquals(40 + 30 / 2.2, mean.lowG(), 1e-9);
        assertEquals(40 + 30 / 1.1, mean.highG(), 1e-9);
        assertEquals("as stocked at 40 g on 2026-03-01; 30 g of feed a fish since, conversion 1.50", mean.evidence());
        book(new Weigh(day(30), "spring", true, 60, 60 * 65, List.of()));
        GrowthPeriod period = only().periods().get(0);
        assertEquals(100 * Math.log(65.0 / 40) / 30, period.growth().specificPercentPerDay(), 1e-9);
        assertEquals(
                1000 * (Math.cbrt(65) - Math.cbrt(40)) / 750, period.growth().thermalCoefficient(), 1e-9);
        assertEquals(1800.0 / (60 * 25), period.conversion().economic(), 1e-9);
        book(new Feed(day(31), 600, 0.32));
        assertEquals(65 + 10 / 1.2, only().mean().likelyG(), 1e-9);
        assertEquals(List.of(), remarks);
    }

    @Test
    void lossesLowerTheCountAndOnlyTheBiologicalConversionCountsThem() {
        book(spring(), new Feed(day(10), 1200, 0.32), new FishLoss(day(20), "spring", 3, "jumped"));
        book(new Weigh(day(30), "spring", true, 57, 57 * 60, List.of()));
        CohortStatus cohort = only();
        assertEquals(57, cohort.count());
        assertEquals(95, cohort.survivalPercent(), 1e-9);
        FeedConversion conversion = cohort.periods().get(0).conversion();
        assertEquals(1200 / (57 * 60 - 2400.0), conversion.economic(), 1e-9);
        assertEquals(1200 / (57 * 60 - 2400.0 + 3 * (40 + 20 / 1.5)), conversion.biological(), 1e-9);
    }

    @Test
    void aWeighingOfAllPutsTheCountRight() {
        book(spring(), new Weigh(day(30), "spring", true, 58, 58 * 60, List.of()));
        assertEquals(58, only().count());
        assertEquals(2, only().lost());
    }

    @Test
    void harvestOfTheLargestLowersTheMeanOfTheRestButNotTheirGrowth() {
        book(spring(), new Weigh(day(1), "spring", true, 60, 60 * 100, List.of()));
        book(new Harvest(day(2), "spring", 20, Collections.nCopies(20, 140.0)));
        CohortStatus cohort = only();
        assertEquals(40, cohort.count());
        assertEquals((6000 - 2800) / 40.0, cohort.mean().likelyG(), 1e-9);
        assertEquals(2800, cohort.harvestG(), 1e-9);
        assertEquals(20, cohort.harvestMassesG().size());
        book(new Weigh(day(31), "spring", true, 40, 40 * 96, List.of()));
        Growth growth = only().periods().get(1).growth();
        assertEquals(100 * Math.log(96 / 80.0) / 30, growth.specificPercentPerDay(), 1e-9);
    }

    @Test
    void feedForNoCohortInParticularIsSharedOutByWhatTheFishWouldEat() {
        book(spring(), new FishIn(day(0), "large", "nile-tilapia", 20, 360));
        book(new Feed(day(1), 1000, 0.32), new Feed(day(2), 100, 0.32, "large", null));
        double small = 60 * Math.pow(40, 0.8);
        double large = 20 * Math.pow(360, 0.8);
        assertEquals(1000 * small / (small + large), stock.status().get(0).feedG(), 1e-9);
        assertEquals(100 + 1000 * large / (small + large), stock.status().get(1).feedG(), 1e-9);
    }

    @Test
    void fishMoveToAnotherCohortAndTheirMassGoesWithThem() {
        book(spring(), new FishMove(day(3), "spring", 10, "fish-tank", "grown"));
        assertEquals(50, stock.status().get(0).count());
        assertEquals(10, stock.status().get(1).count());
        assertEquals(40, stock.status().get(1).mean().likelyG(), 1e-9);
        book(new FishMove(day(4), "spring", 5, FishMove.AWAY, null));
        assertEquals(45, stock.status().get(0).count());
        assertEquals(100, stock.status().get(0).survivalPercent(), 1e-9);
        assertEquals(55, stock.fish());
    }

    @Test
    void allCohortsOfATankCountAgainstItsGuide() {
        book(spring(), new FishIn(day(0), "large", "nile-tilapia", 60, 440));
        Density density = Objects.requireNonNull(stock.status().get(0).density());
        assertEquals(28.8 / 1.5, density.kgM3(), 1e-9);
        assertEquals("19.2 kg/m3, guide 20: within the guide", density.words());
        book(new FishIn(day(1), "more", "nile-tilapia", 10, 300));
        assertTrue(Objects.requireNonNull(stock.status().get(2).density()).overGuide());
    }

    @Test
    void anEntryThatCannotBeBookedIsLeftOutAndToldWithWhatWouldBeRight() {
        book(spring());
        book(new Harvest(day(1), "autumn", 1, List.of(300.0)));
        book(new FishLoss(day(2), "spring", 61, null));
        book(new Weigh(day(3), "spring", false, 70, 3000, List.of()));
        book(new FishMove(day(4), "spring", 10, "fish-tank", null));
        book(new FishMove(day(5), "spring", 10, "pond", "x"));
        book(new FishIn(day(6), "spring", "rainbow-trout", 10, 20));
        book(new FishIn(day(7), "odd", "moonfish", 10, 20));
        assertEquals(60, stock.status().get(0).count());
        assertEquals(
                List.of(
                        "2026-03-02T08:00:00Z harvest: cohort autumn is not known; one of spring",
                        "2026-03-03T08:00:00Z fish-loss: 61 fish of 60 in cohort spring; a count that it has, or a weighing of all to put it right",
                        "2026-03-04T08:00:00Z weigh: 70 weighed of 60 in the cohort; \"of\": \"all\" where the count has to be put right",
                        "2026-03-05T08:00:00Z fish-move: moves 10 of 60 and no \"into\"; the cohort that those become or join",
                        "2026-03-06T08:00:00Z fish-move: vessel pond is not in the site file; a vessel of it, or away",
                        "2026-03-07T08:00:00Z fish-in: cohort spring is nile-tilapia; another name for the rainbow-trout"),
                remarks.subList(0, 6));
        assertTrue(remarks.get(6).startsWith("2026-03-08T08:00:00Z fish-in: species moonfish is not known"));
    }
}
