package bywash.rules.husbandry.season;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BedState;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishLoss;
import bywash.rules.event.OperatorEntry.FishMove;
import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.husbandry.bacteria.AmmoniaBook;
import bywash.rules.husbandry.bacteria.BacteriaBook;
import bywash.rules.husbandry.daily.TestBook;
import bywash.rules.husbandry.feed.FeedBook;
import bywash.rules.husbandry.feed.FeedLoad;
import bywash.rules.husbandry.plants.CropLedger;
import bywash.rules.husbandry.probes.ProbeBook;
import bywash.rules.husbandry.season.EntryBook.Booked;
import bywash.rules.husbandry.season.EntryBook.Shown;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.husbandry.stock.StockLedger;
import bywash.rules.husbandry.stock.WaterHistory;
import bywash.rules.site.Need;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.water.Nitrification;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** All books of the season that entries are written into; begun anew where an entry is taken back or comes late. */
final class SeasonBooks {
    private static final int RECENT_DAYS = 7;
    private static final int MOST_REMARKS = 200;

    private final Site site;
    final TestBook tests;
    final StockLedger stock;
    final FeedBook feed;
    final CropLedger crops;
    final ProbeBook probes;
    final BacteriaBook bacteria = new BacteriaBook();
    final AmmoniaBook ammonia;
    private final ArrayDeque<String> remarks = new ArrayDeque<>();
    private @Nullable String coming;
    private @Nullable PhAim phAim;

    SeasonBooks(Site site, WaterHistory water) {
        this.site = site;
        this.tests = new TestBook(
                site.vessels(VesselRole.RESERVE).stream().map(Vessel::id).collect(Collectors.toSet()));
        this.stock = new StockLedger(site, water, this::remark);
        this.feed = new FeedBook(site.timeZone());
        this.ammonia = new AmmoniaBook(site.timeZone());
        this.crops = new CropLedger(site, this::remark);
        this.probes = new ProbeBook(site, this::remark);
    }

    void remark(String words) {
        remarks.add(words);
        if (remarks.size() > MOST_REMARKS) {
            remarks.poll();
        }
    }

    List<String> remarks() {
        return List.copyOf(remarks);
    }

    /** Books an entry; those that are nothing to the season are passed over. */
    void book(Booked booked) {
        OperatorEntry entry = booked.entry();
        for (Shown shown : booked.shown()) {
            probes.reading(shown.probe(), shown.at(), shown.value());
        }
        switch (entry.kind()) {
            case FEED -> {
                feed.book((Feed) entry, protein());
                stock.book((Feed) entry);
            }
            case FISH_IN -> stock.book((FishIn) entry);
            case WEIGH -> stock.book((Weigh) entry);
            case FISH_LOSS -> stock.book((FishLoss) entry);
            case FISH_MOVE -> stock.book((FishMove) entry);
            case HARVEST -> stock.book((Harvest) entry);
            case STOCKING -> coming((StockingChange) entry);
            case PLANT -> crops.book((Plant) entry);
            case CROP_HARVEST -> crops.book((CropHarvest) entry);
            case BED -> crops.book((BedState) entry);
            case TEST -> {
                WaterTest test = (WaterTest) entry;
                tests.book(test);
                bacteria.tested(test, nitrogenGPerDay(test.at()), booked.temperatureC());
                probes.book(test);
            }
            case DOSE -> ammonia.book((Dose) entry);
            case PH_PLAN -> phAim = (PhAim) entry;
            case CALIBRATE -> probes.book((Calibrate) entry);
            case PROBE_CARE -> probes.book((ProbeCare) entry);
            case TOP_UP_START, TOP_UP_END, BATCH_FILL, BATCH_TREAT, NOTE, STEP_DONE, WITHDRAW -> {
                // water, its reserve, and what is only said
            }
            case ACKNOWLEDGE, SHELVE, UNSHELVE, MAINTENANCE_START, MAINTENANCE_END -> {
                // alarms
            }
            case OUT_OF_SERVICE, RETURN_TO_SERVICE -> {
                // so are these
            }
        }
    }

    /** The latest aim for the pH; null where none. */
    @Nullable
    PhAim phAim() {
        return phAim;
    }

    private void coming(StockingChange change) {
        String species = change.species();
        if (species == null) {
            return;
        }
        if (SpeciesTable.find(site, species).isPresent()) {
            coming = species;
        } else {
            remark(change.at() + " stocking: species " + species + " is not known; one of " + SpeciesTable.words(site)
                    + ", or a species in the site file");
        }
    }

    /** The species chosen to be brought back; else that of the last cohort here, else the site's first, else the first built in. */
    Species comingBack(List<CohortStatus> cohorts) {
        String last = cohorts.isEmpty() ? null : cohorts.get(cohorts.size() - 1).species();
        for (String id : new String[] {coming, last}) {
            Optional<Species> found = id == null ? Optional.empty() : SpeciesTable.find(site, id);
            if (found.isPresent()) {
                return found.get();
            }
        }
        return site.species().isEmpty()
                ? SpeciesTable.builtIn().get(0)
                : site.species().get(0);
    }

    /** Species with fish in the water, known ones only. */
    List<Species> species() {
        return stock.species().stream()
                .map(id -> SpeciesTable.find(site, id))
                .flatMap(Optional::stream)
                .distinct()
                .toList();
    }

    /** As on the last label, else the middle of the first species' band. */
    double protein() {
        if (!Double.isNaN(feed.lastProtein())) {
            return feed.lastProtein();
        }
        return species().stream()
                .filter(s -> s.band(Need.PROTEIN).isPresent())
                .findFirst()
                .map(s -> (s.least(Need.PROTEIN) + s.most(Need.PROTEIN)) / 200)
                .orElse(Nitrification.USUAL_PROTEIN);
    }

    /** Ammonia nitrogen that feed and doses of the last week brought, g/d; NaN where neither is on record. */
    double nitrogenGPerDay(Instant now) {
        FeedLoad load = recent(now);
        double dosed = ammonia.recentGPerDay(now, RECENT_DAYS);
        return load == null ? (dosed > 0 ? dosed : Double.NaN) : load.tanGPerDay() + dosed;
    }

    @Nullable
    FeedLoad recent(Instant now) {
        FeedBook.Day day = feed.recent(now, RECENT_DAYS);
        if (day == null || !(day.feedG() > 0)) {
            return null;
        }
        return FeedLoad.of(day.feedG(), percent(day.proteinG() / day.feedG()));
    }

    /** A label outside 10 to 70 % is taken at the nearer end. */
    static double percent(double protein) {
        return Math.max(10, Math.min(70, 100 * protein));
    }
}
