package bywash.rules.husbandry.season;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.bacteria.AmmoniaBook;
import bywash.rules.husbandry.bacteria.BacteriaBook;
import bywash.rules.husbandry.daily.TestBook;
import bywash.rules.husbandry.feed.FeedBook;
import bywash.rules.husbandry.feed.FeedLoad;
import bywash.rules.husbandry.plants.BedBook;
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
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** All books of the season that entries are written into; begun anew where an entry is taken back or comes late. */
final class SeasonBooks {
    private static final double USUAL_PROTEIN = 0.32;
    private static final int RECENT_DAYS = 7;
    private static final int MOST_REMARKS = 200;

    private final Site site;
    final TestBook tests;
    final StockLedger stock;
    final FeedBook feed;
    final BedBook beds;
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
        this.beds = new BedBook(site, this::remark);
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
        if (entry instanceof Feed fed) {
            feed.book(fed, protein());
        } else if (entry instanceof WaterTest test) {
            tests.book(test);
            bacteria.tested(test, nitrogenGPerDay(test.at()), booked.temperatureC());
        } else if (entry instanceof StockingChange change && change.species() != null) {
            coming(change, change.species());
        } else if (entry instanceof Dose dose) {
            ammonia.book(dose);
        } else if (entry instanceof PhAim aim) {
            phAim = aim;
        }
        stock.book(entry);
        beds.book(entry);
        probes.book(entry);
    }

    /** The latest aim for the pH; null where none. */
    @Nullable
    PhAim phAim() {
        return phAim;
    }

    private void coming(StockingChange change, String species) {
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
                .orElse(USUAL_PROTEIN);
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
