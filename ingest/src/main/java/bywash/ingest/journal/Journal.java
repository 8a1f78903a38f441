package bywash.ingest.journal;

import bywash.ingest.recording.RecordedLine;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Probe;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The durable record of one site in one SQLite file. Entries and transitions are on the disk when their append returns;
 * messages and rollups at the latest with the next of these, or when their own append has returned and the machine keeps
 * running. No fault reaches the caller: {@link #state} says it in words, each append tries anew, and a damaged file is set
 * aside and a fresh one begun. For one thread.
 */
public final class Journal implements AutoCloseable, MinuteArchive {
    private static final Logger LOG = LoggerFactory.getLogger(Journal.class);

    private static final Duration MOST_AHEAD = Duration.ofDays(1);

    private final @Nullable JournalFile file;
    private final InstantSource clock;
    private @Nullable JournalStore store;
    private JournalState state = JournalState.GOOD;
    private int begunAnew;
    /** A damaged file out of which nothing has been taken over yet. */
    private @Nullable Path unsaved;
    /** Whether the last attempt came so far as to have the file open. */
    private boolean reached;

    private long mostPages;
    private volatile long kept;

    private Journal(@Nullable JournalFile file, InstantSource clock) {
        this.file = file;
        this.clock = clock;
    }

    /** Loads SQLite, and all that an opening takes, ahead of the first {@link #open}; a fault of it is told there. */
    public static void loadLibrary() {
        JournalFile.loadLibrary();
    }

    /** Keeps these, each by itself, in a journal in memory that is then forgotten: so that the code is warm. */
    public static void rehearse(List<Writing> all) {
        try {
            JournalStore.rehearse(all);
        } catch (SQLException e) {
            LOG.debug("no rehearsal", e);
        }
    }

    /**
     * Opens the journal of a site, in a folder made for its owner alone. Where the folder cannot be used the journal keeps
     * nothing and says so.
     *
     * @throws JournalInUse where another watch writes it
     */
    public static Journal open(Path dir, String siteId, InstantSource clock) throws JournalInUse {
        JournalFile file;
        try {
            file = JournalFile.lock(dir, siteId);
        } catch (JournalInUse e) {
            throw e;
        } catch (IOException e) {
            Journal none = new Journal(null, clock);
            none.state = JournalState.noFolder(dir, e);
            return none;
        }
        Journal journal = new Journal(file, clock);
        journal.attempt(s -> {});
        return journal;
    }

    public JournalState state() {
        return state;
    }

    /** How often a damaged file was set aside and a new one begun: what stands only in memory should be kept once more. */
    public int begunAnew() {
        return begunAnew;
    }

    /** Messages, entries, states, transitions and rollups kept since it was opened. */
    public long kept() {
        return kept;
    }

    /**
     * Keeps all of it, in this order, or none, as one transaction. Where something in it must be durable it is on the disk
     * before this returns true.
     */
    @SuppressWarnings("NonAtomicVolatileUpdate") // one thread writes; others read
    public boolean write(List<Writing> all) {
        if (all.isEmpty()) {
            return true;
        }
        boolean good = attempt(s -> {
            s.write(all);
            if (file != null && all.stream().anyMatch(Writing::durable)) {
                file.note(new LastKept(s.last(), clock.instant()));
            }
        });
        if (good) {
            kept += all.stream().mapToInt(Writing::lines).sum();
        }
        return good;
    }

    /** Keeps a batch as one transaction. */
    public boolean appendMessages(List<RecordedLine.Message> messages) {
        return write(messages.stream().<Writing>map(Writing.Message::new).toList());
    }

    /** On the disk before it returns true. */
    public boolean appendEntry(OperatorEntry entry) {
        return write(List.of(Writing.Entry.of(entry)));
    }

    /** Changes that came of one event, all or none of them; on the disk before it returns true. */
    public boolean appendTransitions(List<KeptTransition> transitions) {
        return write(List.of(new Writing.Transitions(transitions)));
    }

    /** How the feed or the watch itself stands from here on. */
    public boolean appendState(RecordedLine line) {
        return write(List.of(Writing.State.of(line)));
    }

    /** The watch has come so far, though nothing came in. */
    public boolean alive(Instant at) {
        return attempt(s -> s.alive(at));
    }

    /** A minute that is there already is replaced. */
    public boolean appendRollups(List<Rollup> rollups) {
        return write(rollups.stream().<Writing>map(Writing.Minute::new).toList());
    }

    /**
     * Plays messages, entries and states of this time and later, in the order they were stored. Must not be appended to
     * meanwhile. A line more than a day ahead of the clock is spoilt and passed over: time would run on to it.
     *
     * @return lines that could not be read and were passed over
     */
    public int replay(Instant from, Consumer<RecordedLine> to) {
        Instant end = clock.instant().plus(MOST_AHEAD);
        long[] come = {0};
        return read(
                0,
                s -> s.read(r -> r.lines(from, end, come[0], (seq, line) -> {
                    come[0] = seq; // where the file turns out to be damaged we go on behind it in the new one
                    to.accept(line);
                })));
    }

    @Override
    public List<Kept> keptBefore(Instant before) {
        return read(List.of(), s -> s.readMinutes(m -> m.keptBefore(before)));
    }

    @Override
    public Optional<Instant> firstMinute(Probe probe) {
        return read(Optional.empty(), s -> s.readMinutes(m -> Optional.ofNullable(m.firstMinute(probe))));
    }

    @Override
    public Optional<Rollup> lastMinute(Probe probe, Instant from, Instant to) {
        return read(Optional.empty(), s -> s.readMinutes(m -> Optional.ofNullable(m.lastMinute(probe, from, to))));
    }

    @Override
    public Optional<Rollup> sum(Probe probe, Instant from, Instant to) {
        return read(Optional.empty(), s -> s.readMinutes(m -> Optional.ofNullable(m.sum(probe, from, to))));
    }

    @Override
    public void each(Probe probe, Instant from, Instant to, Consumer<Rollup> sink) {
        read(
                0,
                s -> s.readMinutes(m -> {
                    m.each(probe, from, to, sink);
                    return 0;
                }));
    }

    /** What was last kept of each alarm, by kind and subject. */
    public List<String> alarms() {
        return read(List.of(), s -> s.read(JournalReads::alarms));
    }

    /**
     * The newest incidents of the response sheets, oldest first.
     *
     * @param to is told their alarm lines, and all entries from the first of these on
     */
    public List<KeptIncident> incidents(int most, Story to) {
        return read(List.of(), s -> s.readIncidents(r -> r.newest(most, to)));
    }

    /** What was last known of chlorine at or before a time; empty where nothing is kept of it. */
    public Optional<KeptChlorine> chlorine(Instant upTo) {
        return read(Optional.empty(), s -> s.read(r -> Optional.ofNullable(r.chlorine(upTo))));
    }

    /** How far the last watch came; empty where none has run. */
    public Optional<Instant> lastSeen() {
        return read(Optional.empty(), s -> s.read(r -> Optional.ofNullable(r.lastSeen())));
    }

    /** The last alarm lines, oldest first. */
    public List<String> lastTransitions(int most) {
        return read(List.of(), s -> s.lastTransitions(most));
    }

    /** The minutes of a probe, from inclusive, to exclusive. */
    public List<Rollup> rollups(String probe, Instant from, Instant to) {
        return read(List.of(), s -> s.rollups(probe, from, to));
    }

    /** Trends out of the minutes; any thread may ask, while the one loop goes on writing. */
    public TrendHistory history() {
        return file == null ? TrendHistory.NONE : new JournalHistory(file.path());
    }

    /** Drops messages older than this; entries, transitions and rollups stay. Their room is used again. */
    public boolean prune(Instant before) {
        return attempt(s -> s.prune(before));
    }

    /**
     * Copies the whole to a new file while the watch runs; the copy is its owner's alone.
     *
     * @return false where it could not be written, or stands already
     */
    public boolean backup(Path target) {
        JournalStore s = store;
        if (s == null) {
            return false;
        }
        try {
            JournalFile.createOwned(target);
            s.backup(target);
            return true;
        } catch (IOException | SQLException e) {
            LOG.warn("no copy of the journal was made", e);
            return false;
        }
    }

    /** For tests of a full disk: from now on the file may not grow beyond so many pages, nor beyond what it has. */
    public void limitPages(long pages) {
        mostPages = pages;
        attempt(s -> s.limitPages(pages));
    }

    private interface Work {
        void on(JournalStore store) throws SQLException;
    }

    private interface Question<T> {
        T of(JournalStore store) throws SQLException;
    }

    private <T> T read(T otherwise, Question<T> question) {
        @SuppressWarnings("unchecked")
        T[] answer = (T[]) new Object[] {otherwise};
        if (!attempt(s -> answer[0] = question.of(s)) && !reached) {
            askThePast(s -> answer[0] = question.of(s));
        }
        return answer[0];
    }

    /** Nothing can be written, not even what SQLite needs to open the file; what it holds must not be forgotten for that. */
    private void askThePast(Work question) {
        if (file == null || !Files.exists(file.path())) {
            return;
        }
        try (Connection db = file.past()) {
            question.on(new JournalStore(db));
        } catch (SQLException e) {
            LOG.warn("the journal cannot be read either", e);
        }
    }

    /** Does the work; where the file is damaged, once more on a fresh one. */
    private boolean attempt(Work work) {
        if (file == null) {
            return false;
        }
        reached = false;
        for (int round = 0; round < 2; round++) {
            try {
                JournalStore s = store;
                if (s != null && file.tampered()) {
                    throw new JournalFile.Tampered();
                }
                if (s == null) {
                    s = opened(file);
                    if (mostPages > 0) {
                        s.limitPages(mostPages);
                    }
                    store = s;
                }
                reached = true;
                work.on(s);
                if (!state.durable()) {
                    state = JournalState.GOOD;
                }
                return true;
            } catch (SQLException e) {
                drop(e);
                if (!(e instanceof JournalFile.Tampered) && !JournalFile.damaged(e)) {
                    return fail(file.fault(e), e);
                }
            } catch (IOException e) {
                return fail(file.fault(e), e);
            }
            try {
                unsaved = file.setAside(clock.instant());
            } catch (IOException e) {
                return fail(file.fault(e), e);
            }
        }
        return fail(JournalState.beyondHelp(file.path()), null);
    }

    /** Where a damaged one was set aside, with what can be read of it. */
    private JournalStore opened(JournalFile from) throws SQLException, IOException {
        Connection db = from.connect();
        try {
            Path damaged = unsaved;
            JournalState told = null;
            if (damaged != null) {
                told = JournalState.begunAnew(damaged, Salvage.from(damaged, db));
                unsaved = null;
                begunAnew++;
            }
            JournalStore fresh = new JournalStore(db);
            if (told == null) {
                told = from.missing(fresh);
            }
            if (told != null) {
                from.note(new LastKept(fresh.last(), clock.instant())); // is told once
                state = told;
                LOG.warn(state.detail());
            }
            return fresh;
        } catch (SQLException e) {
            db.close();
            throw e;
        }
    }

    private boolean fail(JournalState fault, @Nullable Exception cause) {
        if (!state.equals(fault)) {
            LOG.warn(fault.detail(), cause);
        }
        state = fault;
        return false;
    }

    /** Lets go of the connection after a fault, so that the next append begins afresh. */
    private void drop(SQLException why) {
        JournalStore s = store;
        store = null;
        if (s != null) {
            try {
                s.close();
            } catch (SQLException e) {
                why.addSuppressed(e);
            }
        }
    }

    @Override
    public void close() {
        try {
            if (store != null) {
                store.close();
                store = null;
            }
            if (file != null) {
                file.close();
            }
        } catch (SQLException | IOException e) {
            LOG.warn("the journal was not closed in order", e);
        }
    }
}
