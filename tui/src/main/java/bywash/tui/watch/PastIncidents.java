package bywash.tui.watch;

import bywash.ingest.feed.EventTimeOrder;
import bywash.ingest.journal.Journal;
import bywash.ingest.journal.KeptIncident;
import bywash.ingest.journal.Story;
import bywash.rules.alarm.AlarmMemory;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.engine.IncidentMemory;
import bywash.rules.event.OperatorEntry;
import bywash.rules.response.IncidentBook;
import bywash.rules.site.Site;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The incidents of the response sheets as they stood, however old: told out of the alarm lines that were shown and the entries,
 * with the figures that were kept of each. What the days played again make of them does not count: an alarm that was older
 * than these would begin a second incident there.
 */
final class PastIncidents implements Story {
    private final Instant applied;
    private final List<Told> told = new ArrayList<>();
    private Instant last = Instant.MIN;

    /** @param at in whose place the rules saw it */
    private record Told(
            Instant at,
            @Nullable AlarmTransition change,
            @Nullable OperatorEntry entry) {}

    private PastIncidents(Instant applied) {
        this.applied = applied;
    }

    /**
     * Gives the rules their incidents back, once the last days were played again.
     *
     * @param alarms as they were kept
     * @param seen how far the watch before had come
     */
    static void tell(Journal journal, Site site, Pipeline pipeline, List<AlarmMemory> alarms, Instant seen) {
        PastIncidents past = new PastIncidents(seen.minus(EventTimeOrder.DEFAULT_LATENESS));
        List<KeptIncident> kept = journal.incidents(IncidentBook.MOST, past);
        List<IncidentMemory> memories = kept.stream()
                .map(k -> IncidentMemoryJson.read(k.json()))
                .flatMap(Optional::stream)
                .toList();
        IncidentBook book = past.book(site);
        book.complete(memories.stream().map(IncidentMemory::figures).toList(), alarms, seen);
        pipeline.restore(book, memories, seen);
    }

    @Override
    public void changed(String line) {
        AlarmLines.read(line).ifPresent(t -> {
            last = t.at().isAfter(last) ? t.at() : last;
            told.add(new Told(last, t, null));
        });
    }

    /** One that the order still holds back is yet to come. */
    @Override
    public void entered(OperatorEntry entry) {
        if (entry.at().isBefore(applied)) {
            told.add(new Told(entry.at().isAfter(last) ? entry.at() : last, null, entry));
        }
    }

    /** An entry is on the record up to the lateness before the rules see it, and changes of that time may stand behind it. */
    private IncidentBook book(Site site) {
        IncidentBook book = new IncidentBook(site);
        told.sort(Comparator.comparing(Told::at));
        for (Told each : told) {
            if (each.change != null) {
                book.told(each.change);
            } else if (each.entry != null) {
                book.entry(each.entry);
            }
        }
        return book;
    }
}
