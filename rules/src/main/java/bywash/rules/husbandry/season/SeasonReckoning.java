package bywash.rules.husbandry.season;

import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.bacteria.AmmoniaSource;
import bywash.rules.husbandry.bacteria.CheckItem;
import bywash.rules.husbandry.bacteria.FishReturn;
import bywash.rules.husbandry.bacteria.FishlessPlan;
import bywash.rules.husbandry.bacteria.PresentWater;
import bywash.rules.husbandry.bacteria.PresentWater.Seen;
import bywash.rules.husbandry.bacteria.ProvenLoad;
import bywash.rules.husbandry.daily.DayValue;
import bywash.rules.husbandry.feed.FeedLoad;
import bywash.rules.husbandry.feed.FeedOutlook;
import bywash.rules.husbandry.feed.FeedPlan;
import bywash.rules.husbandry.feed.WaterNow;
import bywash.rules.husbandry.plants.BedStatus;
import bywash.rules.husbandry.plants.CropLedger;
import bywash.rules.husbandry.plants.NitrogenBalance;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.Stocking;
import bywash.rules.water.AirPressure;
import bywash.rules.water.LabelStrength;
import bywash.rules.water.OxygenSolubility;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Works out of the season's books, and of what the probes show, how all stands at one time. Asked once and thrown away; changes nothing. */
final class SeasonReckoning {
    /** So long a test tells of the water; the longest between two that are due. */
    private static final Duration TEST_HOLDS = Duration.ofDays(14);

    private final Site site;
    private final SeasonBooks books;
    private final Latest present;
    private final Instant now;
    private final Surroundings around;

    SeasonReckoning(Site site, SeasonBooks books, Latest present, Instant now, Surroundings around) {
        this.site = site;
        this.books = books;
        this.present = present;
        this.now = now;
        this.around = around;
    }

    SeasonStatus status() {
        List<CohortStatus> cohorts = books.stock.status();
        List<BedStatus> bedList = books.crops.status();
        WaterNow waterNow = waterNow();
        FeedStatus feedStatus = feedStatus(cohorts, bedList, waterNow);
        return new SeasonStatus(
                cohorts,
                feedStatus,
                bedList,
                NitrogenBalance.of(
                        around.volumeL(), books.nitrogenGPerDay(now), bedList, books.tests.of("nitrate"), now),
                PhOutlook.of(site, waterNow, books.nitrogenGPerDay(now), books.phAim(), around, now),
                around.stocking() == Stocking.FISHLESS ? fishless(waterNow, cohorts) : null,
                books.probes.status(now),
                books.remarks());
    }

    private FishlessStatus fishless(WaterNow waterNow, List<CohortStatus> cohorts) {
        WaterTest tan = books.tests.latest("total-ammonia");
        WaterTest nitrite = books.tests.latest("nitrite");
        FishlessPlan plan = FishlessPlan.of(
                around.volumeL(),
                new FishlessPlan.Known(
                        tan == null ? Double.NaN : tan.value(),
                        tan == null ? null : tan.at(),
                        nitrite == null ? Double.NaN : nitrite.value(),
                        nitrite == null ? null : nitrite.at(),
                        waterNow.ph(),
                        waterNow.temperatureC()),
                now);
        Species species = books.comingBack(cohorts);
        PresentWater seen = new PresentWater(
                quantity -> present.seen(quantity, books.probes, now), this::seenTest, around.residualHighUgL());
        List<CheckItem> list = FishReturn.of(species, seen, now);
        return new FishlessStatus(
                plan,
                plan.products(
                        SeasonBooks.percent(books.protein()),
                        LabelStrength.usualPercent(AmmoniaSource.AMMONIA_SOLUTION.word())),
                species.id(),
                list,
                FishReturn.ready(list));
    }

    private @Nullable Seen seenTest(String quantity) {
        WaterTest test = books.tests.latest(quantity);
        return test == null ? null : new Seen(test.value(), test.at(), "");
    }

    private FeedStatus feedStatus(List<CohortStatus> cohorts, List<BedStatus> bedList, WaterNow waterNow) {
        FeedPlan plan =
                FeedPlan.of(site, cohorts, temperatureC(), books.feed.appetite(now), CropLedger.feedUse(bedList));
        double protein = books.protein();
        FeedLoad planned = FeedLoad.of(plan.middleG(), SeasonBooks.percent(protein));
        FeedLoad recent = books.recent(now);
        List<Species> species = books.species();
        @Nullable ProvenLoad proven = books.bacteria.proven(now);
        return new FeedStatus(
                books.feed.days(),
                books.feed.totalG(),
                recent,
                plan,
                planned,
                protein,
                plan.cohorts().isEmpty() ? List.of() : FeedOutlook.of(recent, planned, species, waterNow, proven));
    }

    private WaterNow waterNow() {
        double temperatureC = temperatureC();
        double saturationMgL = temperatureC >= 0 && temperatureC <= 40
                ? OxygenSolubility.saturationMgL(temperatureC, 0, AirPressure.atmAtElevation(site.elevationM()))
                : Double.NaN;
        DayValue oxygen = present.day(Quantity.DISSOLVED_OXYGEN, now);
        DayValue ph = present.day(Quantity.PH, now);
        return new WaterNow(
                oxygen == null ? Double.NaN : oxygen.low(),
                saturationMgL,
                temperatureC,
                ph == null ? Double.NaN : ph.mean(),
                test("total-ammonia"),
                test("nitrite"),
                test("alkalinity"),
                around.volumeL());
    }

    private double temperatureC() {
        DayValue day = present.day(Quantity.TEMPERATURE, now);
        return day == null ? Double.NaN : day.mean();
    }

    private double test(String quantity) {
        WaterTest test = books.tests.latest(quantity);
        return test == null || now.isAfter(test.at().plus(TEST_HOLDS)) ? Double.NaN : test.value();
    }
}
