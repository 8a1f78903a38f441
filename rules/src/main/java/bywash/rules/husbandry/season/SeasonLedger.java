package bywash.rules.husbandry.season;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.bacteria.BacteriaBook;
import bywash.rules.husbandry.bacteria.CheckItem;
import bywash.rules.husbandry.bacteria.FishReturn;
import bywash.rules.husbandry.bacteria.FishlessPlan;
import bywash.rules.husbandry.bacteria.PresentWater;
import bywash.rules.husbandry.bacteria.PresentWater.Seen;
import bywash.rules.husbandry.bacteria.ProvenLoad;
import bywash.rules.husbandry.daily.DailyWater;
import bywash.rules.husbandry.daily.DayValue;
import bywash.rules.husbandry.daily.TestBook;
import bywash.rules.husbandry.feed.FeedBook;
import bywash.rules.husbandry.feed.FeedLoad;
import bywash.rules.husbandry.feed.FeedOutlook;
import bywash.rules.husbandry.feed.FeedPlan;
import bywash.rules.husbandry.feed.WaterNow;
import bywash.rules.husbandry.plants.BedBook;
import bywash.rules.husbandry.plants.BedStatus;
import bywash.rules.husbandry.plants.NitrogenBalance;
import bywash.rules.husbandry.probes.ProbeBook;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.husbandry.stock.StockLedger;
import bywash.rules.site.Need;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.Stocking;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.water.AirPressure;
import bywash.rules.water.OxygenSolubility;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Books every entry and reading of the season. One writer; {@link #status} is worked out anew at most once a minute of event time. */
public final class SeasonLedger {
    private static final double USUAL_PROTEIN = 0.32;
    /** Strength of household ammonia as it is often sold, %; the label decides. Common practice, no source. */
    private static final double USUAL_AMMONIA_PERCENT = 9.5;

    private static final int RECENT_DAYS = 7;
    private static final int MOST_REMARKS = 200;
    private static final Duration TEST_HOLDS = Duration.ofDays(14);
    private static final Duration FRESH = Duration.ofMinutes(1);

    private final Site site;
    private final DailyWater water;
    private final TestBook tests;
    private final StockLedger stock;
    private final FeedBook feed;
    private final BedBook beds;
    private final ProbeBook probes;
    private final Latest present;
    private final BacteriaBook bacteria = new BacteriaBook();
    private final ArrayDeque<String> remarks = new ArrayDeque<>();
    private @Nullable SeasonStatus latest;
    private Instant latestAt = Instant.EPOCH;
    private Stocking latestStocking = Stocking.FISH;

    public SeasonLedger(Site site) {
        this.site = site;
        this.water = new DailyWater(site);
        this.tests = new TestBook(
                site.vessels(VesselRole.RESERVE).stream().map(Vessel::id).collect(Collectors.toSet()));
        this.stock = new StockLedger(site, water, this::remark);
        this.feed = new FeedBook(site.timeZone());
        this.beds = new BedBook(site, this::remark);
        this.probes = new ProbeBook(site, this::remark);
        this.present = new Latest(site, water);
    }

    private void remark(String words) {
        remarks.add(words);
        if (remarks.size() > MOST_REMARKS) {
            remarks.poll();
        }
    }

    /** Books an entry; those that are nothing to the season are passed over. */
    public void book(OperatorEntry entry) {
        latest = null;
        if (entry instanceof Feed fed) {
            feed.book(fed, protein());
        } else if (entry instanceof WaterTest test) {
            tests.book(test);
            FeedLoad load = recent(test.at());
            bacteria.tested(test, load == null ? Double.NaN : load.tanGPerDay(), temperature(test.at()));
        }
        stock.book(entry);
        beds.book(entry);
        probes.book(entry);
    }

    /** A believed reading of a probe. */
    public void reading(String probe, Instant at, double value) {
        water.reading(probe, at, value);
        probes.reading(probe, at, value);
        present.reading(probe, at, value);
    }

    /** Days of a probe's readings, oldest first. */
    public List<DayValue> days(String probe) {
        return water.days(probe);
    }

    /** Manual tests, in order of entry. */
    public List<WaterTest> tests() {
        return tests.all();
    }

    /** Why a probe's readings are not to be believed as they are; empty where they may be. */
    public String suspect(String probe, Instant now) {
        return probes.suspect(probe, now);
    }

    /** Species with fish in the water, known ones only. */
    public List<Species> species() {
        return species(stock.status());
    }

    /** How all stands at {@code now}. */
    public SeasonStatus status(Instant now, Surroundings around) {
        SeasonStatus status = latest;
        if (status == null
                || around.stocking() != latestStocking
                || Duration.between(latestAt, now).abs().compareTo(FRESH) >= 0) {
            status = work(now, around);
            latest = status;
            latestAt = now;
            latestStocking = around.stocking();
        }
        return status;
    }

    private SeasonStatus work(Instant now, Surroundings around) {
        List<CohortStatus> cohorts = stock.status();
        List<BedStatus> bedList = beds.status();
        WaterNow waterNow = waterNow(now, around.volumeL());
        FeedStatus feedStatus = feedStatus(now, cohorts, bedList, waterNow);
        FeedLoad recent = feedStatus.recent();
        return new SeasonStatus(
                cohorts,
                feedStatus,
                bedList,
                NitrogenBalance.of(
                        around.volumeL(),
                        recent == null ? Double.NaN : recent.tanGPerDay(),
                        bedList,
                        tests.of("nitrate"),
                        now),
                PhOutlook.of(site, waterNow, recent, now),
                around.stocking() == Stocking.FISHLESS ? fishless(now, waterNow, cohorts, around) : null,
                probes.status(now),
                List.copyOf(remarks));
    }

    private FishlessStatus fishless(Instant now, WaterNow waterNow, List<CohortStatus> cohorts, Surroundings around) {
        WaterTest tan = tests.latest("total-ammonia");
        WaterTest nitrite = tests.latest("nitrite");
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
        Species species = comingBack(cohorts);
        PresentWater present = new PresentWater(
                quantity -> this.present.seen(quantity, probes, now), this::seenTest, around.residualHighUgL());
        List<CheckItem> list = FishReturn.of(species, present, now);
        return new FishlessStatus(
                plan,
                plan.products(percent(protein()), USUAL_AMMONIA_PERCENT),
                species.id(),
                list,
                FishReturn.ready(list));
    }

    private @Nullable Seen seenTest(String quantity) {
        WaterTest test = tests.latest(quantity);
        return test == null ? null : new Seen(test.value(), test.at(), "");
    }

    /** The species of the last cohort here, else the site's first, else tilapia, the first built in. */
    private Species comingBack(List<CohortStatus> cohorts) {
        Species first = site.species().isEmpty()
                ? SpeciesTable.builtIn().get(0)
                : site.species().get(0);
        return cohorts.isEmpty()
                ? first
                : SpeciesTable.find(site, cohorts.get(cohorts.size() - 1).species())
                        .orElse(first);
    }

    private FeedStatus feedStatus(Instant now, List<CohortStatus> cohorts, List<BedStatus> bedList, WaterNow waterNow) {
        FeedPlan plan = FeedPlan.of(site, cohorts, temperature(now), feed.appetite(now), BedBook.feedUse(bedList));
        double protein = protein();
        FeedLoad planned = FeedLoad.of(plan.middleG(), percent(protein));
        FeedLoad recent = recent(now);
        List<Species> species = species(cohorts);
        @Nullable ProvenLoad proven = bacteria.proven(now);
        return new FeedStatus(
                feed.days(),
                feed.totalG(),
                recent,
                plan,
                planned,
                protein,
                plan.cohorts().isEmpty() ? List.of() : FeedOutlook.of(recent, planned, species, waterNow, proven));
    }

    private List<Species> species(List<CohortStatus> cohorts) {
        return cohorts.stream()
                .filter(c -> c.count() > 0)
                .map(c -> SpeciesTable.find(site, c.species()))
                .flatMap(Optional::stream)
                .distinct()
                .toList();
    }

    /** As on the last label, else the middle of the first species' band. */
    private double protein() {
        if (!Double.isNaN(feed.lastProtein())) {
            return feed.lastProtein();
        }
        return species(stock.status()).stream()
                .filter(s -> s.band(Need.PROTEIN).isPresent())
                .findFirst()
                .map(s -> (s.least(Need.PROTEIN) + s.most(Need.PROTEIN)) / 200)
                .orElse(USUAL_PROTEIN);
    }

    private @Nullable FeedLoad recent(Instant now) {
        FeedBook.Day day = feed.recent(now, RECENT_DAYS);
        if (day == null || !(day.feedG() > 0)) {
            return null;
        }
        return FeedLoad.of(day.feedG(), percent(day.proteinG() / day.feedG()));
    }

    /** A label outside 10 to 70 % is taken at the nearer end. */
    private static double percent(double protein) {
        return Math.max(10, Math.min(70, 100 * protein));
    }

    private WaterNow waterNow(Instant now, double volumeL) {
        double temperature = temperature(now);
        double saturation = temperature >= 0 && temperature <= 40
                ? OxygenSolubility.saturationMgL(temperature, 0, AirPressure.atmAtElevation(site.elevationM()))
                : Double.NaN;
        DayValue oxygen = present.day(Quantity.DISSOLVED_OXYGEN, now);
        DayValue ph = present.day(Quantity.PH, now);
        return new WaterNow(
                oxygen == null ? Double.NaN : oxygen.low(),
                saturation,
                temperature,
                ph == null ? Double.NaN : ph.mean(),
                test("total-ammonia", now),
                test("nitrite", now),
                test("alkalinity", now),
                volumeL);
    }

    private double temperature(Instant now) {
        DayValue day = present.day(Quantity.TEMPERATURE, now);
        return day == null ? Double.NaN : day.mean();
    }

    private double test(String quantity, Instant now) {
        WaterTest test = tests.latest(quantity);
        return test == null || now.isAfter(test.at().plus(TEST_HOLDS)) ? Double.NaN : test.value();
    }
}
