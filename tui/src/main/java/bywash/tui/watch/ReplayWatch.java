package bywash.tui.watch;

import bywash.ingest.recording.RecordedLine;
import bywash.rules.event.OperatorEntry;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;

/** Plays lines at a pace, and lets the grower act on them meanwhile. */
public final class ReplayWatch implements Runnable {
    private static final long PAUSE_NANOS = 50_000_000;

    private final Pipeline pipeline;
    private final List<RecordedLine> lines;
    private final double times;
    private final ConcurrentLinkedQueue<OperatorEntry> entries = new ConcurrentLinkedQueue<>();
    private volatile FrameSource latest;
    private volatile boolean stop;

    /** @param times real time; infinite plays without waiting */
    public ReplayWatch(Pipeline pipeline, List<RecordedLine> lines, double times) {
        this.pipeline = pipeline;
        this.lines = lines;
        this.times = times;
        Instant start = lines.isEmpty() ? Instant.EPOCH : lines.get(0).time();
        this.latest = new FrameSource(pipeline.snapshot(), start, 0, 0, 0, pipeline.safeReserves(), "replay");
    }

    public void enter(OperatorEntry entry) {
        entries.add(entry);
    }

    public FrameSource latest() {
        return latest;
    }

    public void stop() {
        stop = true;
    }

    @Override
    public void run() {
        if (lines.isEmpty()) {
            return;
        }
        PacedClock clock = new PacedClock(lines.get(0).time(), Double.isInfinite(times) ? 1 : times);
        clock.go();
        int next = 0;
        Instant now = lines.get(0).time();
        while (!stop) {
            boolean ended = next >= lines.size();
            now = ended
                    ? now
                    : Double.isInfinite(times) ? lines.get(lines.size() - 1).time() : clock.instant();
            while (next < lines.size() && !lines.get(next).time().isAfter(now) && !stop) {
                pipeline.accept(lines.get(next));
                next++;
            }
            for (OperatorEntry entry = entries.poll(); entry != null; entry = entries.poll()) {
                pipeline.enter(entry);
            }
            if (next >= lines.size()) {
                now = lines.get(lines.size() - 1).time();
            }
            pipeline.advanceTo(now);
            latest = new FrameSource(
                    pipeline.snapshot(),
                    now,
                    0,
                    pipeline.refused(),
                    pipeline.late(),
                    pipeline.safeReserves(),
                    words(next));
            LockSupport.parkNanos(PAUSE_NANOS);
        }
    }

    private String words(int next) {
        String pace = Double.isInfinite(times) ? "max" : String.format(Locale.ROOT, "%.0fx", times);
        return next >= lines.size()
                ? "replay ended"
                : String.format(Locale.ROOT, "replay %s, %d %%", pace, 100L * next / lines.size());
    }
}
