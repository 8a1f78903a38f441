package bywash.tui.watch;

import bywash.ingest.journal.Journal;
import bywash.ingest.journal.JournalState;
import bywash.ingest.journal.KeptTransition;
import bywash.ingest.journal.MinuteMeans;
import bywash.ingest.journal.Rollup;
import bywash.ingest.journal.TrendHistory;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a watch keeps. What the grower enters is on the disk before the engine sees it, an alarm's change before a screen
 * does; messages are stored every other second, and always before what came of them. Without a journal nothing is kept. For the watch's own loop, except {@link #history} and {@link #fault}.
 */
public final class WatchRecord implements AutoCloseable {
    private static final Duration STORE_EVERY = Duration.ofSeconds(2);
    private static final Duration ALIVE_EVERY = Duration.ofSeconds(10);
    private static final Duration MINUTES_AGAIN = Duration.ofMinutes(5);
    private static final Duration PRUNE_EVERY = Duration.ofHours(1);
    private static final Duration KEEP_MESSAGES = Duration.ofDays(60);

    private final @Nullable Journal journal;
    private final MinuteMeans minutes = new MinuteMeans();
    private final List<Message> waiting = new ArrayList<>();
    private Instant storedAt = Instant.EPOCH;
    private Instant aliveAt = Instant.EPOCH;
    private Instant prunedAt = Instant.EPOCH;
    private boolean live;
    private volatile String fault = "";

    private WatchRecord(@Nullable Journal journal) {
        this.journal = journal;
    }

    /** Keeps in a journal, which is closed with this. */
    public static WatchRecord in(Journal journal) {
        return new WatchRecord(journal);
    }

    /** Keeps nothing: for a demo. */
    public static WatchRecord inMemory() {
        WatchRecord record = new WatchRecord(null);
        record.live = true;
        return record;
    }

    /** From here on lines are new; until then they came out of the journal and only what they add up to is taken. */
    void goLive(Instant now, @Nullable Instant since) {
        live = true;
        List<Rollup> again = minutes.drain();
        if (journal != null && since != null) {
            Instant last = since.minus(MINUTES_AGAIN);
            journal.appendRollups(
                    again.stream().filter(r -> r.minute().isAfter(last)).toList());
        }
        aliveAt = now;
        storedAt = now;
    }

    /** Before the loop starts: the text of the site file, so that a report needs the journal alone. */
    public void site(Instant now, String text) {
        if (journal != null) {
            journal.keepSite(now, text);
        }
    }

    /** A message came in. */
    void message(Message message) {
        if (journal != null) {
            waiting.add(message);
        }
    }

    /** The grower entered something; on the disk when this returns true. Without a journal that is not to be had. */
    boolean entry(OperatorEntry entry) {
        if (journal == null) {
            return false;
        }
        store();
        return journal.appendEntry(entry);
    }

    /** The feed, or the watch itself, changed its state. */
    void state(RecordedLine line) {
        if (journal != null) {
            store();
            journal.appendState(line);
        }
    }

    /** Alarms changed, all by one event; on the disk when this returns, unless {@link #fault} says otherwise. */
    void transitions(List<KeptTransition> transitions) {
        if (journal != null) {
            store();
            journal.appendTransitions(transitions);
        }
    }

    /** A reading goes to the trends. */
    public void reading(Reading reading) {
        if (journal != null) {
            minutes.add(reading.probe(), reading.at(), reading.value());
        }
    }

    /** Time passes: stores what waits, and prunes. */
    void tick(Instant now) {
        Journal j = journal;
        if (j == null || !live) {
            return;
        }
        if (!now.isBefore(storedAt.plus(STORE_EVERY))) {
            boolean some = !waiting.isEmpty();
            store();
            j.appendRollups(minutes.drain());
            storedAt = now;
            if (some) {
                aliveAt = now;
            }
        }
        if (!now.isBefore(aliveAt.plus(ALIVE_EVERY))) {
            j.alive(now);
            aliveAt = now;
        }
        if (!now.isBefore(prunedAt.plus(PRUNE_EVERY))) {
            j.prune(now.minus(KEEP_MESSAGES));
            prunedAt = now;
        }
        said(j);
    }

    private void store() {
        if (journal != null && !waiting.isEmpty()) {
            journal.appendMessages(List.copyOf(waiting));
            waiting.clear();
        }
    }

    private void said(Journal j) {
        JournalState state = j.state();
        long lost = j.unkept();
        fault = state.durable() && lost > 0 && state.detail().isEmpty()
                ? "the journal works again; " + lost + " lines were not kept"
                : state.detail();
    }

    /** What is wrong with the journal, in words; empty while all is well. Any thread. */
    public String fault() {
        return fault;
    }

    /** Lines and minutes kept so far. Any thread. */
    long kept() {
        return journal == null ? 0 : journal.kept();
    }

    /** Lines and minutes that could not be kept. Any thread. */
    long unkept() {
        return journal == null ? 0 : journal.unkept();
    }

    /** Trends; any thread may ask. */
    public TrendHistory history() {
        return journal == null ? TrendHistory.NONE : journal.history();
    }

    @Override
    public void close() {
        if (journal != null) {
            store();
            journal.appendRollups(minutes.finish());
            journal.close();
        }
    }
}
