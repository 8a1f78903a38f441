package bywash.tui.watch;

import bywash.ingest.feed.SteadyClock;
import bywash.ingest.metrics.WatchMetrics;
import bywash.ingest.mqtt.FeedState;
import bywash.ingest.mqtt.InboundQueue;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.engine.Snapshot;
import bywash.rules.event.OperatorEntry;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The single-writer loop of a live watch: messages, entries and the clock in; the latest frame out. */
public final class LiveWatch implements Runnable {
    private static final Logger LOG = LoggerFactory.getLogger(LiveWatch.class);
    private static final long WAIT_MS = 100;
    /** Longer than any round takes: the machine slept, or its clock was set forward. */
    private static final Duration LEAP = Duration.ofMinutes(1);

    private static final Duration TELL = Duration.ofHours(1);

    private final Pipeline pipeline;
    private final InboundQueue queue;
    private final InstantSource clock;
    private final WatchRecord record;
    private final ConcurrentLinkedQueue<Entered> entries = new ConcurrentLinkedQueue<>();
    private final ConcurrentLinkedQueue<FeedState> states = new ConcurrentLinkedQueue<>();
    private final List<Supplier<String>> troubles = new CopyOnWriteArrayList<>();
    private final TroubleLines lines = new TroubleLines();
    private volatile FrameSource latest;
    private volatile boolean stop;
    private @Nullable Instant lastRound;
    private volatile long faults;
    private @Nullable WatchMetrics metrics;
    private RecordedLine.@Nullable WatchStarted first;
    private Runnable settle = () -> {};
    private volatile String note = "";
    private volatile RecordedLine.@Nullable WatchStarted gap;
    private volatile Instant gapUntil = Instant.EPOCH;

    /** @param clock whole milliseconds, as the record keeps them, so that a replay sees the same times */
    public LiveWatch(Pipeline pipeline, InboundQueue queue, InstantSource clock, WatchRecord record) {
        this.pipeline = pipeline;
        this.queue = queue;
        this.clock = clock;
        this.record = record;
        this.latest = new FrameSource(pipeline.snapshot(), clock.instant(), 0, 0, 0, pipeline.safeReserves(), "");
    }

    private record Entered(OperatorEntry entry, CompletableFuture<Boolean> kept) {}

    /**
     * Any thread: what the grower entered; on the record before the screen shows its effect.
     *
     * @return completes once it is on the record, with false where the journal cannot keep it yet: it counts, waits in
     *     memory, and is written when the journal works again
     */
    public CompletableFuture<Boolean> enter(OperatorEntry entry) {
        CompletableFuture<Boolean> kept = new CompletableFuture<>();
        entries.add(new Entered(entry, kept));
        return kept;
    }

    /** Any thread: the connection changed. That we ourselves end it is no loss of the feed. */
    public void feed(FeedState state) {
        if (state.phase() != FeedState.Phase.STOPPED) {
            states.add(state);
        }
    }

    /** Any thread: something else that can go wrong, in words; empty while it goes well. */
    public void tellOf(Supplier<String> trouble) {
        troubles.add(trouble);
    }

    /** Before the loop starts: who gets a line when something new is wrong, and when it is over. */
    public void onTrouble(Consumer<String> line) {
        lines.to(line);
    }

    /** Before the loop starts: what is to be done when an event is over. */
    void afterEachEvent(Runnable then) {
        settle = then;
    }

    /** Before the loop starts: where its figures go. */
    void measure(WatchMetrics to) {
        metrics = to;
        pipeline.onRefusal(to::refused);
    }

    /** Faults of ours so far. */
    long faults() {
        return faults;
    }

    /** Any thread: words for the head line. */
    public void note(String words) {
        note = words;
    }

    /** Any thread: a time that nobody watched, to be told of until an instant. */
    void gap(RecordedLine.WatchStarted started, Instant until) {
        gap = started;
        gapUntil = until;
    }

    public FrameSource latest() {
        return latest;
    }

    public void stop() {
        stop = true;
    }

    @Override
    public void run() {
        List<Message> batch = new ArrayList<>();
        while (!stop) {
            try {
                queue.drain(batch, waitMs());
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                break;
            }
            step(batch);
            batch.clear();
        }
        end();
    }

    /** Until a decision falls due that no message wakes us for; an alarm does not wait for the end of a pause. */
    private long waitMs() {
        Instant due = pipeline.nextDue();
        return due == null
                ? WAIT_MS
                : Math.max(
                        1,
                        Math.min(WAIT_MS, Duration.between(clock.instant(), due).toMillis()));
    }

    /** Lets go of the record; the loop does so when it ends. */
    void end() {
        record.close();
    }

    /** Before the loop starts: the line that its first round begins with, when all who are to be told are there. */
    void beginWith(RecordedLine.WatchStarted line) {
        first = line;
    }

    private void begin() {
        RecordedLine.WatchStarted line = first;
        first = null;
        if (line != null) {
            guarded(() -> pipeline.advanceTo(line.unwatchedSince()));
            record.state(line);
            guarded(() -> pipeline.accept(line));
        }
    }

    /** One round of the loop. */
    void step(List<Message> batch) {
        WatchMetrics m = metrics;
        if (m == null) {
            round(batch);
            return;
        }
        long began = System.nanoTime();
        round(batch);
        m.loop(Duration.ofNanos(System.nanoTime() - began));
        if (!batch.isEmpty()) {
            m.lag(Duration.between(batch.get(batch.size() - 1).time(), clock.instant()));
        }
    }

    private void round(List<Message> batch) {
        Instant now = clock.instant();
        begin();
        leap(now, batch);
        for (FeedState state = states.poll(); state != null; state = states.poll()) {
            RecordedLine line = new RecordedLine.Feed(now, state.up(), state.detail());
            guarded(() -> pipeline.advanceTo(now));
            record.state(line);
            guarded(() -> pipeline.accept(line));
        }
        batch.forEach(this::message);
        for (Entered next = entries.poll(); next != null; next = entries.poll()) {
            Entered entered = next;
            guarded(() -> pipeline.advanceTo(entered.entry().at()));
            boolean kept = record.entry(entered.entry());
            guarded(() -> pipeline.enter(entered.entry()));
            entered.kept().complete(kept);
        }
        guarded(() -> pipeline.advanceTo(now));
        record.tick(now);
        latest = frame(now);
    }

    /**
     * What the time before a line brings is on the record before the line is: whoever is killed between the two has left a
     * record that, played again, brings the very same.
     */
    private void message(Message message) {
        guarded(() -> pipeline.advanceTo(message.time()));
        record.message(message);
        guarded(() -> pipeline.accept(message));
    }

    /** Time that passed between two rounds without a message in it was watched by nobody: no silence is read into it. */
    private void leap(Instant now, List<Message> batch) {
        Instant before = lastRound;
        lastRound = now;
        if (before == null) {
            return;
        }
        Instant first =
                batch.stream().map(Message::time).min(Comparator.naturalOrder()).orElse(now);
        if (Duration.between(before, first).compareTo(LEAP) > 0) {
            RecordedLine.WatchStarted line = new RecordedLine.WatchStarted(first, before);
            guarded(() -> pipeline.advanceTo(before));
            record.state(line);
            guarded(() -> pipeline.accept(line));
            gap(line, now.plus(TELL));
        }
    }

    /** A fault of ours in one event must not end the watch: it is logged and said, and the watch goes on. */
    @SuppressWarnings("NonAtomicVolatileUpdate") // the loop alone writes it
    private void guarded(Runnable event) {
        try {
            event.run();
            settle.run();
        } catch (RuntimeException e) {
            faults++;
            LOG.error("a fault of ours in the rules; the watch goes on", e);
        }
    }

    private FrameSource frame(Instant now) {
        Snapshot snapshot = pipeline.snapshot();
        return new FrameSource(
                snapshot,
                now,
                queue.dropped(),
                pipeline.refused(),
                pipeline.late(),
                pipeline.safeReserves(),
                words(now, snapshot.site().timeZone()));
    }

    private String words(Instant now, ZoneId zone) {
        List<String> words = new ArrayList<>();
        if (!record.fault().isEmpty()) {
            words.add(record.fault());
        }
        RecordedLine.WatchStarted unwatched = gap;
        if (unwatched != null && now.isBefore(gapUntil)) {
            words.add(GapWords.of(unwatched, zone));
        }
        if (!note.isEmpty()) {
            words.add(note);
        }
        if (clock instanceof SteadyClock steady && !steady.ahead().isZero()) {
            words.add("clock set back: times run " + steady.ahead().toSeconds() + " s ahead");
        }
        for (Supplier<String> trouble : troubles) {
            if (!trouble.get().isEmpty()) {
                words.add(trouble.get());
            }
        }
        if (faults > 0) {
            words.add("FAULT OF OURS, see bywash.log");
        }
        String all = String.join(", ", words);
        lines.tell(all, now);
        return all;
    }
}
