package bywash.rules.husbandry.season;

import static bywash.rules.husbandry.Sites.day;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishLoss;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.husbandry.Sites;
import bywash.rules.husbandry.daily.DayValue;
import bywash.rules.husbandry.stock.GrowthPeriod;
import bywash.rules.site.Stocking;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SeasonLedgerTest {
    private final SeasonLedger season = new SeasonLedger(Sites.site());

    private static final Surroundings FISH = new Surroundings(Stocking.FISH, 2460, 0);

    private void month() {
        season.book(new FishIn(day(0), "spring", "nile-tilapia", 60, 100));
        for (int d = 0; d < 30; d++) {
            season.book(new Feed(day(d + 0.1), 100, 0.32));
            for (int h = 0; h < 24; h++) {
                season.reading("fish-temp", day(d + h / 24.0), 24 + Math.sin(2 * Math.PI * h / 24));
                season.reading("fish-do", day(d + h / 24.0), 7 + Math.cos(2 * Math.PI * h / 24));
            }
        }
    }

    @Test
    void growthUsesTheTemperaturesThatTheProbeSaw() {
        month();
        season.book(new Weigh(day(30), "spring", true, 60, 60 * 133.0, List.of()));
        GrowthPeriod period =
                season.status(day(30), FISH).cohorts().get(0).periods().get(0);
        assertEquals(720, period.growth().degreeDays(), 5);
        assertEquals(
                1000 * (Math.cbrt(133) - Math.cbrt(100)) / 720, period.growth().thermalCoefficient(), 0.01);
        assertEquals(3000 / (60 * 33.0), period.conversion().economic(), 1e-9);
    }

    @Test
    void daysKeepLowestMeanAndHighest() {
        month();
        DayValue full = season.days("fish-temp").get(5);
        assertEquals(LocalDate.parse("2026-03-06"), full.day());
        assertEquals(24, full.count());
        assertEquals(24, full.mean(), 1e-9);
        assertEquals(23, full.low(), 0.01);
        assertEquals(25, full.high(), 0.01);
    }

    @Test
    void theFeedOfTheLastWeekIsTheLoadAndTestsUnderItProveTheBacteria() {
        month();
        SeasonStatus before = season.status(day(30), FISH);
        assertNotNull(before.feed().recent());
        assertEquals(100, before.feed().recent().feedGPerDay(), 1e-9);
        assertEquals(100 * 0.32 * 0.092, before.nitrogen().madeGPerDay(), 1e-9);
        season.book(new WaterTest(day(30.1), "fish-tank", "total-ammonia", 0.2));
        season.book(new WaterTest(day(30.1), "fish-tank", "nitrite", 0.1));
        season.book(new FishIn(day(30.2), "more", "nile-tilapia", 80, 200));
        SeasonStatus after = season.status(day(30.3), FISH);
        assertTrue(
                after.feed().warnings().stream()
                        .anyMatch(w -> w.what().contains("bacteria have been shown to carry 2.9")),
                after.feed().warnings().toString());
    }

    @Test
    void aDayWithoutFeedCountsAsNone() {
        season.book(new Feed(day(0), 70, 0.32));
        season.book(new Feed(day(8), 70, 0.32));
        assertEquals(10, assertNotNullLoad(day(9)), 1e-9);
    }

    private double assertNotNullLoad(java.time.Instant at) {
        var recent = season.status(at, FISH).feed().recent();
        assertNotNull(recent);
        return recent.feedGPerDay();
    }

    private SeasonStatus with(Consumer<SeasonLedger> entries) {
        SeasonLedger ledger = new SeasonLedger(Sites.site());
        entries.accept(ledger);
        return ledger.status(day(9), FISH);
    }

    @Test
    void whatIsTakenBackLeavesTheBooksAsIfItHadNeverBeen() {
        WaterTest low = new WaterTest(day(2), "fish-tank", "ph", 6.1);
        SeasonStatus never = with(s -> {
            s.book(new FishIn(day(0), "spring", "nile-tilapia", 60, 100));
            s.reading("fish-ph", day(2), 6.8);
            s.book(new WaterTest(day(2), "fish-tank", "ph", 6.7));
            s.book(new Feed(day(4), 70, 0.32));
        });
        SeasonStatus back = with(s -> {
            s.book(new FishIn(day(0), "spring", "nile-tilapia", 60, 100));
            s.reading("fish-ph", day(2), 6.8);
            s.book(new WaterTest(day(2), "fish-tank", "ph", 6.7));
            s.book(low);
            s.book(new FishLoss(day(3), "spring", 6, null));
            s.book(new Feed(day(4), 70, 0.32));
            s.book(new Withdraw(day(5), "test", day(2), 2, "wrong cup"));
            s.book(new Withdraw(day(5), "fish-loss", day(3), 1, ""));
        });
        assertEquals(never, back);
        assertEquals(60, back.cohorts().get(0).count());
    }

    @Test
    void takingBackTwiceOrWhatNeverWasIsRemarked() {
        SeasonStatus status = with(s -> {
            s.book(new Feed(day(4), 70, 0.32));
            s.book(new Withdraw(day(5), "feed", day(4), 1, ""));
            s.book(new Withdraw(day(5), "feed", day(4), 1, ""));
            s.book(new Withdraw(day(5), "feed", day(3), 1, ""));
        });
        assertEquals(0, status.feed().totalG(), 1e-9);
        assertEquals(2, status.remarks().size());
        assertTrue(
                status.remarks().get(0).contains("withdraw: no feed of "),
                status.remarks().toString());
    }

    @Test
    void anEntryThatComesLateIsBookedInItsPlaceInTime() {
        Consumer<SeasonLedger> before = s -> s.book(new FishIn(day(0), "spring", "nile-tilapia", 60, 100));
        Weigh weigh = new Weigh(day(3), "spring", true, 60, 60 * 110.0, List.of());
        Feed feed = new Feed(day(4), 300, 0.32);
        assertEquals(
                with(s -> {
                    before.accept(s);
                    s.book(weigh);
                    s.book(feed);
                }),
                with(s -> {
                    before.accept(s);
                    s.book(feed);
                    s.book(weigh);
                }));
    }

    @Test
    void theSpeciesChosenIsTheOneTheChecklistIsFor() {
        SeasonLedger ledger = new SeasonLedger(Sites.site());
        ledger.book(new StockingChange(day(1), Stocking.FISHLESS, "rainbow-trout"));
        FishlessStatus fishless = ledger.status(day(2), new Surroundings(Stocking.FISHLESS, 2460, 0))
                .fishless();
        assertNotNull(fishless);
        assertEquals("rainbow-trout", fishless.species());
        assertEquals(Stocking.FISHLESS, ledger.stocking());
    }

    private static OperatorEntry any(SplittableRandom random, double day) {
        return switch (random.nextInt(8)) {
            case 0 -> new FishIn(day(day), "c" + random.nextInt(2), "nile-tilapia", 20, 50);
            case 1 -> new Feed(day(day), random.nextInt(20, 90), 0.32);
            case 2 -> new FishLoss(day(day), "c" + random.nextInt(2), random.nextInt(1, 4), null);
            case 3 -> new Weigh(day(day), "c" + random.nextInt(2), false, 5, 5 * random.nextDouble(50, 90), List.of());
            case 4 -> new Plant(day(day), "bed-1", "lettuce", random.nextDouble(0.1, 0.5));
            case 5 -> new CropHarvest(day(day), "bed-1", "lettuce", random.nextInt(50, 400), 0.1);
            case 6 -> new WaterTest(day(day), "fish-tank", "nitrate", random.nextInt(5, 90));
            default -> new Dose(day(day), "sump", "ammonium-chloride", random.nextInt(2, 20));
        };
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void takenBackInAnyOrderIsAsNeverEntered(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        SeasonLedger all = new SeasonLedger(Sites.site());
        SeasonLedger standing = new SeasonLedger(Sites.site());
        List<OperatorEntry> gone = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            OperatorEntry entry = any(random, i / 8.0);
            all.book(entry);
            if (random.nextInt(3) == 0) {
                gone.add(0, entry);
            } else {
                standing.book(entry);
            }
        }
        gone.forEach(e -> all.book(new Withdraw(day(8.5), e.word(), e.at(), 1, "")));
        assertEquals(standing.status(day(9), FISH), all.status(day(9), FISH));
        assertEquals(gone.size(), all.withdrawals().size());
    }
}
