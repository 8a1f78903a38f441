package bywash.tui.watch;

import bywash.ingest.journal.MinuteArchive;
import bywash.ingest.journal.MinuteArchive.Kept;
import bywash.ingest.journal.Rollup;
import bywash.rules.event.OperatorEntry;
import bywash.rules.husbandry.daily.DailyWater;
import bywash.rules.husbandry.daily.DayValue;
import bywash.rules.husbandry.daily.PastMinutes;
import bywash.rules.husbandry.daily.RecentMinutes;
import bywash.rules.husbandry.season.SeasonLedger;
import bywash.rules.site.Probe;
import bywash.rules.site.Site;
import bywash.tui.watch.CareTimes.Span;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Tells the rules of all that lies before the lines that are played again: what the grower entered, and what the probes read, by the
 * days and minutes of the journal. The season's books then hold what they would hold had the watch never stopped.
 */
public final class PastSeason {
    private static final Duration EDGE = Duration.ofHours(1);

    private final MinuteArchive archive;
    private final Site site;
    private final CareTimes care = new CareTimes();

    private PastSeason(MinuteArchive archive, Site site) {
        this.archive = archive;
        this.site = site;
    }

    /**
     * Tells it.
     *
     * @param from when the lines begin; the beginning of a minute
     * @param told is given each entry, in the order they were entered
     */
    public static void tell(
            MinuteArchive archive, Site site, Instant from, Pipeline pipeline, Consumer<OperatorEntry> told) {
        PastSeason past = new PastSeason(archive, site);
        List<Kept> entries = archive.keptBefore(from);
        entries.forEach(e -> past.care.entry(e.entry()));
        SeasonLedger season = pipeline.season();
        past.days(from, season);
        past.lastMinutes(from, season);
        season.readingsFrom(from);
        for (Kept kept : entries) {
            told.accept(kept.entry());
            pipeline.remember(kept.entry(), past.minutes(kept));
        }
    }

    private List<Probe> probes() {
        return site.probes().stream().filter(p -> DailyWater.kept(p.quantity())).toList();
    }

    private void days(Instant from, SeasonLedger season) {
        ZoneId zone = site.timeZone();
        LocalDate last = from.atZone(zone).toLocalDate();
        for (Probe probe : probes()) {
            Optional<Instant> first = archive.firstMinute(probe);
            if (first.isEmpty()) {
                continue;
            }
            LocalDate day = first.get().atZone(zone).toLocalDate();
            LocalDate kept = last.minusDays(DailyWater.MOST_DAYS);
            for (day = day.isBefore(kept) ? kept : day; !day.isAfter(last); day = day.plusDays(1)) {
                Instant begin = day.atStartOfDay(zone).toInstant();
                Instant end = day.plusDays(1).atStartOfDay(zone).toInstant();
                for (Span quiet : care.quiet(probe.id(), begin, end.isBefore(from) ? end : from)) {
                    LocalDate of = day;
                    archive.sum(probe, quiet.from(), quiet.to())
                            .ifPresent(r ->
                                    season.day(probe.id(), new DayValue(of, r.count(), r.low(), r.mean(), r.high())));
                }
            }
        }
    }

    /** Minutes of the day that the lines begin in: tests on it look back to them. */
    private void lastMinutes(Instant from, SeasonLedger season) {
        Instant midnight = from.atZone(site.timeZone())
                .toLocalDate()
                .atStartOfDay(site.timeZone())
                .toInstant();
        Instant since = midnight.minus(EDGE);
        for (Probe probe : probes()) {
            for (Span quiet : care.quiet(probe.id(), since, from)) {
                archive.each(
                        probe,
                        quiet.from(),
                        quiet.to(),
                        r -> season.minute(probe.id(), r.minute(), r.count(), r.mean()));
            }
        }
    }

    /** A watch knew no older minutes than its own; one entered later than that was held against none. */
    private PastMinutes minutes(Kept kept) {
        boolean late = kept.entry().at().isBefore(kept.enteredAt().minus(RecentMinutes.REACH));
        return late ? PastMinutes.NONE : new OfArchive();
    }

    private final class OfArchive implements PastMinutes {
        private Probe probe(String id) {
            return site.probe(id).orElseThrow(() -> new IllegalArgumentException("no probe " + id));
        }

        @Override
        public Optional<Minute> before(String id, Instant at, Duration within) {
            Probe probe = probe(id);
            Instant minute = at.truncatedTo(ChronoUnit.MINUTES);
            return care.quiet(id, at.minus(within), minute).stream()
                    .flatMap(q -> archive.lastMinute(probe, q.from(), q.to()).stream())
                    .max(Comparator.comparing(Rollup::minute))
                    .map(r -> new Minute(r.minute(), r.mean()));
        }

        @Override
        public double mean(String id, Instant from, Instant to) {
            Probe probe = probe(id);
            long count = 0;
            double sum = 0;
            Instant end = to.truncatedTo(ChronoUnit.MINUTES);
            for (Span quiet : care.quiet(id, from, end)) {
                Optional<Rollup> part = archive.sum(probe, quiet.from(), quiet.to());
                count += part.map(Rollup::count).orElse(0);
                sum += part.map(r -> r.count() * r.mean()).orElse(0.0);
            }
            return count == 0 ? Double.NaN : sum / count;
        }
    }
}
