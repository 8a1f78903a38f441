package bywash.rules.husbandry.season;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.bacteria.BacteriaBook;
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
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.husbandry.stock.StockLedger;
import bywash.rules.site.Need;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.water.AirPressure;
import bywash.rules.water.OxygenSolubility;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Books every entry and reading of the season. One writer; {@link #status} is worked out anew at most once a minute of event time. */
public final class SeasonLedger {
    private static final double USUAL_PROTEIN = 0.32;
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
    private final BacteriaBook bacteria = new BacteriaBook();
    private final ArrayDeque<String> remarks = new ArrayDeque<>();
    private @Nullable SeasonStatus latest;
    private Instant latestAt = Instant.MIN;

    public SeasonLedger(Site site) {
        this.site = site;
        this.water = new DailyWater(site);
        this.tests = new TestBook(
                site.vessels(VesselRole.RESERVE).stream().map(Vessel::id).collect(Collectors.toSet()));
        this.stock = new StockLedger(site, water, this::remark);
        this.feed = new FeedBook(site.timeZone());
        this.beds = new BedBook(site, this::remark);
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
    }

    /** A believed reading of a probe. */
    public void reading(String probe, Instant at, double value) {
        water.reading(probe, at, value);
    }

    /** Days of a probe's readings, oldest first. */
    public List<DayValue> days(String probe) {
        return water.days(probe);
    }

    /** Manual tests, in order of entry. */
    public List<WaterTest> tests() {
        return tests.all();
    }

    /** How all stands at {@code now}. */
    public SeasonStatus status(Instant now) {
        SeasonStatus status = latest;
        if (status == null || Duration.between(latestAt, now).abs().compareTo(FRESH) >= 0) {
            status = work(now);
            latest = status;
            latestAt = now;
        }
        return status;
    }

    private SeasonStatus work(Instant now) {
        List<CohortStatus> cohorts = stock.status();
        List<BedStatus> bedList = beds.status();
        FeedStatus feedStatus = feedStatus(now, cohorts, bedList);
        FeedLoad recent = feedStatus.recent();
        return new SeasonStatus(
                cohorts,
                feedStatus,
                bedList,
                NitrogenBalance.of(
                        site.systemVolumeL(),
                        recent == null ? Double.NaN : recent.tanGPerDay(),
                        bedList,
                        tests.of("nitrate"),
                        now),
                List.copyOf(remarks));
    }

    private FeedStatus feedStatus(Instant now, List<CohortStatus> cohorts, List<BedStatus> bedList) {
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
                plan.cohorts().isEmpty() ? List.of() : FeedOutlook.of(recent, planned, species, waterNow(now), proven));
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

    private WaterNow waterNow(Instant now) {
        double temperature = temperature(now);
        double saturation = temperature >= 0 && temperature <= 40
                ? OxygenSolubility.saturationMgL(temperature, 0, AirPressure.atmAtElevation(site.elevationM()))
                : Double.NaN;
        DayValue oxygen = lastDay(now, Quantity.DISSOLVED_OXYGEN);
        DayValue ph = lastDay(now, Quantity.PH);
        return new WaterNow(
                oxygen == null ? Double.NaN : oxygen.low(),
                saturation,
                temperature,
                ph == null ? Double.NaN : ph.mean(),
                test("total-ammonia", now),
                test("nitrite", now),
                test("alkalinity", now),
                site.systemVolumeL());
    }

    private double temperature(Instant now) {
        DayValue day = lastDay(now, Quantity.TEMPERATURE);
        return day == null ? Double.NaN : day.mean();
    }

    /** Today, or yesterday where today has nothing; null where neither has. */
    private @Nullable DayValue lastDay(Instant now, Quantity quantity) {
        String vessel = site.probes().stream()
                .filter(p -> p.quantity() == quantity && fishTank(p))
                .map(Probe::vessel)
                .findFirst()
                .orElse("");
        LocalDate today = now.atZone(site.timeZone()).toLocalDate();
        DayValue day = water.on(vessel, quantity, today);
        return day == null ? water.on(vessel, quantity, today.minusDays(1)) : day;
    }

    private boolean fishTank(Probe probe) {
        return site.vessel(probe.vessel())
                .map(v -> v.role() == VesselRole.FISH_TANK)
                .orElse(false);
    }

    private double test(String quantity, Instant now) {
        WaterTest test = tests.latest(quantity);
        return test == null || now.isAfter(test.at().plus(TEST_HOLDS)) ? Double.NaN : test.value();
    }
}
