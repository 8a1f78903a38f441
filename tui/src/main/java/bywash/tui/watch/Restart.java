package bywash.tui.watch;

import bywash.ingest.journal.Journal;
import bywash.ingest.recording.RecordedLine;
import bywash.rules.alarm.AlarmMemory;
import bywash.rules.chlorine.ChlorineMemory;
import bywash.rules.site.Site;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Brings a fresh pipeline back to where the journal left it. All that the grower ever entered is told to the rules, and what
 * the probes read day by day ({@link PastSeason}); the
 * last days are played again in full, from a whole hour of which was kept what was known of chlorine ({@link ChlorineMemory}); this
 * brings back what was learned, and then each alarm is set to the state that was kept
 * of it, and so are the incidents ({@link PastIncidents}), however old. Its changes on the way are nobody's news.
 *
 * @param unwatchedSince how far the watch before had come; null where none has run
 * @param broken lines that could not be read
 * @param kept each alarm that ever was, as it stood
 */
public record Restart(@Nullable Instant unwatchedSince, int broken, List<AlarmMemory> kept) {
    public Restart {
        kept = List.copyOf(kept);
    }

    /** Played again in full, and up to an hour more. */
    static final Duration WINDOW = Duration.ofDays(3);

    /** @param now when the watch begins */
    public static Restart from(Journal journal, Site site, Pipeline pipeline, Instant now) {
        Optional<Instant> last = journal.lastSeen();
        if (last.isEmpty()) {
            return new Restart(null, 0, List.of());
        }
        Instant seen = last.get().isAfter(now) ? now : last.get();
        Instant earliest = seen.minus(WINDOW).truncatedTo(ChronoUnit.MINUTES);
        ChlorineMemory chlorine = journal.chlorine(earliest)
                .flatMap(kept -> ChlorineMemoryJson.read(kept.json()))
                .orElse(null);
        Instant from = chlorine == null ? earliest : chlorine.at();
        PastSeason.tell(journal, site, from, pipeline, entry -> {});
        pipeline.restore(chlorine);
        int broken = journal.replay(from, pipeline::accept);
        pipeline.advanceTo(seen);
        List<AlarmMemory> memories = journal.alarms().stream()
                .flatMap(json -> AlarmMemoryJson.read(json).stream())
                .toList();
        pipeline.restore(memories, seen);
        PastIncidents.tell(journal, site, pipeline, memories, seen);
        return new Restart(seen, broken, memories);
    }

    /** The line that stands in the journal from now on; null where no watch ran before. */
    public RecordedLine.@Nullable WatchStarted line(Instant now) {
        return unwatchedSince == null ? null : new RecordedLine.WatchStarted(now, unwatchedSince);
    }
}
