package bywash.tui.watch;

import bywash.ingest.journal.FileJournal;
import bywash.ingest.mqtt.FeedState;
import bywash.ingest.mqtt.InboundQueue;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.event.EngineEvent.FeedChanged;
import bywash.rules.event.OperatorEntry;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.jspecify.annotations.Nullable;

/** The single-writer loop of a live watch: messages, entries and the clock in; the latest frame out. */
public final class LiveWatch implements Runnable {
    private static final long WAIT_MS = 100;

    private final Pipeline pipeline;
    private final InboundQueue queue;
    private final InstantSource clock;
    private final @Nullable FileJournal journal;
    private final ConcurrentLinkedQueue<OperatorEntry> entries = new ConcurrentLinkedQueue<>();
    private final ConcurrentLinkedQueue<FeedState> states = new ConcurrentLinkedQueue<>();
    private volatile FrameSource latest;
    private volatile boolean stop;
    private volatile String note = "";

    public LiveWatch(Pipeline pipeline, InboundQueue queue, InstantSource clock, @Nullable FileJournal journal) {
        this.pipeline = pipeline;
        this.queue = queue;
        this.clock = clock;
        this.journal = journal;
        this.latest = new FrameSource(pipeline.snapshot(), clock.instant(), 0, 0, 0, pipeline.safeReserves(), "");
    }

    /** Any thread: what the grower entered; on the record before the screen shows its effect. */
    public void enter(OperatorEntry entry) {
        entries.add(entry);
    }

    /** Any thread: the connection changed. */
    public void feed(FeedState state) {
        states.add(state);
    }

    /** Any thread: words for the head line. */
    public void note(String words) {
        note = words;
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
                queue.drain(batch, WAIT_MS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            }
            step(batch);
            batch.clear();
        }
        if (journal != null) {
            journal.close();
        }
    }

    private void step(List<Message> batch) {
        Instant now = clock.instant();
        for (FeedState state = states.poll(); state != null; state = states.poll()) {
            pipeline.feed(new FeedChanged(now, state.up(), state.detail()));
        }
        for (Message message : batch) {
            record(message);
            pipeline.accept(message);
        }
        for (OperatorEntry entry = entries.poll(); entry != null; entry = entries.poll()) {
            record(new RecordedLine.Entry(entry));
            pipeline.enter(entry);
        }
        if (journal != null) {
            journal.flush();
        }
        pipeline.advanceTo(now);
        latest = frame(now);
    }

    private void record(RecordedLine line) {
        if (journal != null) {
            journal.append(line);
        }
    }

    private FrameSource frame(Instant now) {
        String words = journal != null && !journal.fault().isEmpty() ? journal.fault() : note;
        return new FrameSource(
                pipeline.snapshot(),
                now,
                queue.dropped(),
                pipeline.refused(),
                pipeline.late(),
                pipeline.safeReserves(),
                words);
    }
}
