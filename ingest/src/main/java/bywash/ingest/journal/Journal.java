package bywash.ingest.journal;

import bywash.ingest.recording.RecordedLine;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Probe;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
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

    private final OpenJournal open;
    private final InstantSource clock;
    private volatile long kept;

    private Journal(OpenJournal open, InstantSource clock) {
        this.open = open;
        this.clock = clock;
    }

    /** Loads SQLite, and all that an opening takes, ahead of the first {@link #open}; a fault of it is told there. */
    public static void loadLibrary() {
        JournalFile.loadLibrary();
    }

    /** Has SQLite's native library unpacked in this folder, which is made when it is needed, instead of the machine's own. */
    public static void libraryFolder(Path folder, InstantSource clock) {
        NativeLibrary.folder(folder, clock);
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
        try {
            OpenJournal open = new OpenJournal(JournalFile.lock(dir, siteId), clock);
            open.attempt(s -> {});
            return new Journal(open, clock);
        } catch (JournalInUse e) {
            throw e;
        } catch (IOException e) {
            return new Journal(OpenJournal.none(clock, JournalState.noFolder(dir, e)), clock);
        }
    }

    /** How it stands: whether it keeps what it is given, and if not why. */
    public JournalState state() {
        return open.state();
    }

    /** How often a damaged file was set aside and a new one begun: what stands only in memory should be kept once more. */
    public int begunAnew() {
        return open.begunAnew();
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
        boolean good = open.attempt(s -> {
            s.write(all);
            if (all.stream().anyMatch(Writing::durable)) {
                open.noteLast(s);
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
        return open.attempt(s -> s.alive(at));
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
        return open.read(
                0,
                s -> s.read(r -> r.lines(from, end, come[0], (seq, line) -> {
                    come[0] = seq; // where the file turns out to be damaged we go on behind it in the new one
                    to.accept(line);
                })));
    }

    @Override
    public List<Kept> keptBefore(Instant before) {
        return open.read(List.of(), s -> s.readMinutes(m -> m.keptBefore(before)));
    }

    @Override
    public Optional<Instant> firstMinute(Probe probe) {
        return open.read(Optional.empty(), s -> s.readMinutes(m -> Optional.ofNullable(m.firstMinute(probe))));
    }

    @Override
    public Optional<Rollup> lastMinute(Probe probe, Instant from, Instant to) {
        return open.read(Optional.empty(), s -> s.readMinutes(m -> Optional.ofNullable(m.lastMinute(probe, from, to))));
    }

    @Override
    public Optional<Rollup> sum(Probe probe, Instant from, Instant to) {
        return open.read(Optional.empty(), s -> s.readMinutes(m -> Optional.ofNullable(m.sum(probe, from, to))));
    }

    @Override
    public void each(Probe probe, Instant from, Instant to, Consumer<Rollup> sink) {
        open.read(
                0,
                s -> s.readMinutes(m -> {
                    m.each(probe, from, to, sink);
                    return 0;
                }));
    }

    /** What was last kept of each alarm, by kind and subject. */
    public List<String> alarms() {
        return open.read(List.of(), s -> s.read(JournalReads::alarms));
    }

    /**
     * The newest incidents of the response sheets, oldest first.
     *
     * @param to is told their alarm lines, and all entries from the first of these on
     */
    public List<KeptIncident> incidents(int most, Story to) {
        return open.read(List.of(), s -> s.readIncidents(r -> r.newest(most, to)));
    }

    /** What was last known of chlorine at or before a time; empty where nothing is kept of it. */
    public Optional<KeptChlorine> chlorine(Instant upTo) {
        return open.read(Optional.empty(), s -> s.read(r -> Optional.ofNullable(r.chlorine(upTo))));
    }

    /** How far the last watch came; empty where none has run. */
    public Optional<Instant> lastSeen() {
        return open.read(Optional.empty(), s -> s.read(r -> Optional.ofNullable(r.lastSeen())));
    }

    /** The last alarm lines, oldest first. */
    public List<String> lastTransitions(int most) {
        return open.read(List.of(), s -> s.read(r -> r.lastTransitions(most)));
    }

    /** The minutes of a probe, from inclusive, to exclusive. */
    public List<Rollup> rollups(String probe, Instant from, Instant to) {
        return open.read(List.of(), s -> s.readMinutes(m -> m.of(probe, from, to)));
    }

    /** Trends out of the minutes; any thread may ask, while the one loop goes on writing. */
    public TrendHistory history() {
        Path path = open.path();
        return path == null ? TrendHistory.NONE : new JournalHistory(path);
    }

    /** Drops messages older than this; entries, transitions and rollups stay. Their room is used again. */
    public boolean prune(Instant before) {
        return open.attempt(s -> s.prune(before));
    }

    /**
     * Copies the whole to a new file while the watch runs; the copy is its owner's alone.
     *
     * @return false where it could not be written, or stands already
     */
    public boolean backup(Path target) {
        JournalStore s = open.store();
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

    /** For tests of a full disk; see {@link OpenJournal#limitPages}. */
    public void limitPages(long pages) {
        open.limitPages(pages);
    }

    @Override
    public void close() {
        open.close();
    }
}
