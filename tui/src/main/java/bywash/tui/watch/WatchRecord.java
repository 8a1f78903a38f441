package bywash.tui.watch;

import bywash.ingest.journal.Backlog;
import bywash.ingest.journal.Journal;
import bywash.ingest.journal.KeptTransition;
import bywash.ingest.journal.MinuteMeans;
import bywash.ingest.journal.Rollup;
import bywash.ingest.journal.TrendHistory;
import bywash.ingest.journal.Writing;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What a watch keeps. What the grower enters is on the disk before the engine sees it, an alarm's change before a screen
 * does; messages are stored every other second, and always before what came of them. What the journal cannot keep waits in
 * memory, in order, and is written as soon as it can be; {@link #fault} says so meanwhile. Without a journal nothing is kept.
 * For the watch's own loop, except {@link #history} and {@link #fault}.
 */
public final class WatchRecord implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(WatchRecord.class);
    private static final Duration STORE_EVERY = Duration.ofSeconds(2);
    private static final Duration ALIVE_EVERY = Duration.ofSeconds(10);
    private static final Duration MINUTES_AGAIN = Duration.ofMinutes(5);
    private static final Duration PRUNE_EVERY = Duration.ofHours(1);
    private static final Duration KEEP_MESSAGES = Duration.ofDays(60);
    /** In one transaction. */
    private static final int TOGETHER = 4000;

    /** Lines whose own time says that a watch ran; what is kept beside them does not. */
    private static final List<Writing.Kind> TELLS_OF_THE_WATCH =
            List.of(Writing.Kind.MESSAGE, Writing.Kind.ENTRY, Writing.Kind.ALARM, Writing.Kind.STATE);

    private final @Nullable Journal journal;
    private final Backlog backlog;
    private final JournalWords words = new JournalWords();
    private final MinuteMeans minutes = new MinuteMeans();
    private Instant storedAt = Instant.EPOCH;
    private Instant aliveAt = Instant.EPOCH;
    private Instant prunedAt = Instant.EPOCH;
    private Supplier<List<KeptTransition>> standing = List::of;
    private int begunAnew;
    private boolean live;
    private volatile String fault = "";
    private volatile long unkept;

    private WatchRecord(@Nullable Journal journal, long mostBytes) {
        this.journal = journal;
        this.backlog = new Backlog(mostBytes);
    }

    /** Keeps in a journal, which is closed with this. An eighth of the heap, 32 MB at most, may wait to be written. */
    public static WatchRecord in(Journal journal) {
        return in(journal, Math.min(32_000_000, Runtime.getRuntime().maxMemory() / 8));
    }

    /** @param mostBytes bound on what may wait while the journal cannot keep it */
    static WatchRecord in(Journal journal, long mostBytes) {
        return new WatchRecord(journal, mostBytes);
    }

    /** Keeps nothing: for a demo. */
    public static WatchRecord inMemory() {
        WatchRecord record = new WatchRecord(null, 1);
        record.live = true;
        return record;
    }

    /** From here on lines are new; until then they came out of the journal and only what they add up to is taken. */
    void goLive(Instant now, @Nullable Instant since) {
        live = true;
        List<Rollup> again = minutes.drain();
        if (journal != null && since != null) {
            Instant last = since.minus(MINUTES_AGAIN);
            again.stream().filter(r -> r.minute().isAfter(last)).forEach(r -> backlog.add(new Writing.Minute(r)));
            store();
        }
        aliveAt = now;
        storedAt = now;
    }

    /** Before the loop starts: the text of the site file, so that a report needs the journal alone. */
    public void site(Instant now, String text) {
        add(new Writing.Site(now, text));
        store();
    }

    /** A message came in. */
    void message(Message message) {
        add(new Writing.Message(message));
        if (backlog.full()) {
            store();
        }
    }

    /** The grower entered something; on the disk when this returns true. Without a journal that is not to be had. */
    boolean entry(OperatorEntry entry) {
        add(Writing.Entry.of(entry));
        return journal != null && store();
    }

    /** The feed, or the watch itself, changed its state. */
    void state(RecordedLine line) {
        add(Writing.State.of(line));
        store();
    }

    /**
     * Alarms changed, all by one event; on the disk when this returns, unless {@link #fault} says otherwise.
     *
     * @param figures what readings have added to incidents since, by their id
     */
    void transitions(List<KeptTransition> transitions, Map<String, String> figures) {
        if (!transitions.isEmpty()) {
            add(new Writing.Transitions(transitions));
        }
        figures.forEach((incident, json) -> add(new Writing.Figures(incident, json)));
        if (!transitions.isEmpty()) {
            store();
        }
    }

    /** What is known of chlorine at a time; stored with what comes next. */
    void chlorine(Instant at, String json) {
        add(new Writing.Chlorine(at, json));
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
            boolean tells = TELLS_OF_THE_WATCH.stream().anyMatch(kind -> backlog.waiting(kind) > 0);
            minutes.drain().forEach(r -> backlog.add(new Writing.Minute(r)));
            boolean stored = store();
            storedAt = now;
            if (tells && stored) {
                aliveAt = now;
            }
        }
        if (backlog.isEmpty() && !now.isBefore(aliveAt.plus(ALIVE_EVERY))) {
            j.alive(now);
            aliveAt = now;
        }
        if (backlog.isEmpty() && !now.isBefore(prunedAt.plus(PRUNE_EVERY))) {
            j.prune(now.minus(KEEP_MESSAGES));
            prunedAt = now;
        }
        fault = words.of(j.state(), backlog, now);
    }

    private void add(Writing writing) {
        if (journal != null) {
            backlog.add(writing);
        }
    }

    /** All that waits, in order; what cannot be kept waits on, within the bound. */
    private boolean store() {
        while (journal != null && !backlog.isEmpty()) {
            List<Writing> next = backlog.first(TOGETHER);
            if (!journal.write(next)) {
                if (backlog.full()) {
                    backlog.shrink();
                    unkept = backlog.lost();
                }
                return false;
            }
            backlog.written(next.size());
            if (journal.begunAnew() != begunAnew) {
                begunAnew = journal.begunAnew();
                backlog.add(new Writing.Standing(standing.get()));
            }
        }
        return true;
    }

    /** Before the loop starts: how all alarms stand, for a journal that has to be begun anew. */
    void standing(Supplier<List<KeptTransition>> now) {
        standing = now;
        begunAnew = journal == null ? 0 : journal.begunAnew();
    }

    /** What is wrong with the journal, in words; empty while all is well. Any thread. */
    public String fault() {
        return fault;
    }

    /** Lines and minutes kept so far. Any thread. */
    long kept() {
        return journal == null ? 0 : journal.kept();
    }

    /** Lines and minutes given up because the journal could not keep them. Any thread. */
    long unkept() {
        return unkept;
    }

    /** Entries and alarm lines that are not on the disk yet. */
    int owed() {
        return backlog.waiting(Writing.Kind.ENTRY) + backlog.waiting(Writing.Kind.ALARM);
    }

    /** Trends; any thread may ask. */
    public TrendHistory history() {
        return journal == null ? TrendHistory.NONE : journal.history();
    }

    @Override
    public void close() {
        if (journal != null) {
            minutes.finish().forEach(r -> backlog.add(new Writing.Minute(r)));
            String lost = store() ? "" : JournalWords.unwritten(backlog);
            if (!lost.isEmpty()) {
                LOG.error(
                        "the watch ends and its journal could not keep {}: {}",
                        lost,
                        journal.state().detail());
            }
            journal.close();
        }
    }
}
