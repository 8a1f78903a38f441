package bywash.rules.husbandry.season;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.husbandry.daily.DailyWater;
import bywash.rules.husbandry.daily.DayValue;
import bywash.rules.husbandry.daily.PastMinutes;
import bywash.rules.husbandry.daily.RecentMinutes;
import bywash.rules.husbandry.season.EntryBook.Booked;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.Stocking;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Books every entry and reading of the season. One writer; {@link #status} is worked out anew by {@link SeasonReckoning}, at most once a
 * minute of event time.
 */
public final class SeasonLedger {
    private static final Duration FRESH = Duration.ofMinutes(1);

    private final Site site;
    private final DailyWater water;
    private final Latest present;
    private final RecentMinutes minutes = new RecentMinutes();
    private final EntryBook entries = new EntryBook();
    private SeasonBooks books;
    private @Nullable SeasonStatus latest;
    private Instant readingsFrom = Instant.MIN;
    private Instant latestAt = Instant.EPOCH;
    private Stocking latestStocking = Stocking.FISH;

    public SeasonLedger(Site site) {
        this.site = site;
        this.water = new DailyWater(site);
        this.books = new SeasonBooks(site, water);
        this.present = new Latest(site, water);
    }

    /** Books an entry; those that are nothing to the season are passed over. One that is late is put in its place in time. */
    public void book(OperatorEntry entry) {
        book(entry, minutes);
    }

    /**
     * Books an entry of a time before {@link #readingsFrom}.
     *
     * @param past what the probes read then
     */
    public void book(OperatorEntry entry, PastMinutes past) {
        if (entry instanceof Withdraw withdraw) {
            latest = null;
            withdraw(withdraw);
        } else if (EntryBook.withdrawable(entry.kind())) {
            latest = null;
            Booked booked = entry instanceof WaterTest test
                    ? new Booked(entry, present.temperatureC(test.at(), past), present.shown(test, past))
                    : new Booked(entry, Double.NaN, List.of());
            if (entries.add(booked)) {
                books.book(booked);
            } else {
                bookAnew();
            }
        }
    }

    private void withdraw(Withdraw withdraw) {
        if (entries.named(withdraw) == null) {
            books.remark(withdraw.at() + " withdraw: no " + withdraw.of() + " of " + withdraw.entered()
                    + " stands on record; the word and the time of an entry that counts");
            return;
        }
        entries.withdraw(withdraw);
        bookAnew();
    }

    private void bookAnew() {
        SeasonBooks anew = new SeasonBooks(site, water);
        entries.standing().forEach(anew::book);
        books = anew;
    }

    /** Entries that could be taken back and were not, oldest first. */
    public List<OperatorEntry> standing() {
        return entries.standing().stream().map(Booked::entry).toList();
    }

    /** What was taken back, in that order. */
    public List<Withdraw> withdrawals() {
        return entries.withdrawals();
    }

    /** Whether an entry of this kind can be taken back. */
    public static boolean withdrawable(OperatorEntry entry) {
        return EntryBook.withdrawable(entry.kind());
    }

    /** What an entry would take back; null where nothing. Ask before it is booked. */
    public @Nullable OperatorEntry named(Withdraw withdraw) {
        return entries.named(withdraw);
    }

    /** A believed reading of a probe. */
    public void reading(String probe, Instant at, double value) {
        if (at.isBefore(readingsFrom)) {
            return; // it is in the days and minutes that are on record
        }
        water.reading(probe, at, value);
        minutes.reading(probe, at, value);
        present.reading(probe, at, value);
    }

    /**
     * From this time on readings come in one by one; what was before is told by {@link #day} and {@link #minute}.
     *
     * @param from the beginning of a minute
     */
    public void readingsFrom(Instant from) {
        readingsFrom = from;
        latest = null;
    }

    /** What a probe read on a day, or in a part of it, before {@link #readingsFrom}. */
    public void day(String probe, DayValue day) {
        water.day(probe, day);
    }

    /** What a probe read in one of the last minutes before {@link #readingsFrom}; oldest first. It does not count to the days. */
    public void minute(String probe, Instant start, long count, double mean) {
        minutes.minute(probe, start, count, mean);
        present.reading(probe, start, mean);
    }

    /** Days of a probe's readings, oldest first. */
    public List<DayValue> days(String probe) {
        return water.days(probe);
    }

    /** Manual tests, in order of entry. */
    public List<WaterTest> tests() {
        return books.tests.all();
    }

    /** The latest test of one vessel that counts; null where none. */
    public @Nullable WaterTest test(String vessel, String quantity) {
        List<WaterTest> all = books.tests.all();
        for (int i = all.size() - 1; i >= 0; i--) {
            if (all.get(i).vessel().equals(vessel) && all.get(i).quantity().equals(quantity)) {
                return all.get(i);
            }
        }
        return null;
    }

    /** The latest test in the loop that counts; null where none. */
    public @Nullable WaterTest loopTest(String quantity) {
        return books.tests.latest(quantity);
    }

    /** Stocking by the entries that count, else as the site file says. */
    public Stocking stocking() {
        Stocking stocking = site.stocking();
        for (Booked booked : entries.standing()) {
            if (booked.entry() instanceof StockingChange change) {
                stocking = change.stocking();
            }
        }
        return stocking;
    }

    /** Why a probe's readings are not to be believed as they are; empty where they may be. */
    public String suspect(String probe, Instant now) {
        return books.probes.suspect(probe, now);
    }

    /** Species with fish in the water, known ones only. */
    public List<Species> species() {
        return books.species();
    }

    /** How all stands at {@code now}. */
    public SeasonStatus status(Instant now, Surroundings around) {
        SeasonStatus status = latest;
        if (status == null
                || around.stocking() != latestStocking
                || Duration.between(latestAt, now).abs().compareTo(FRESH) >= 0) {
            status = new SeasonReckoning(site, books, present, now, around).status();
            latest = status;
            latestAt = now;
            latestStocking = around.stocking();
        }
        return status;
    }
}
