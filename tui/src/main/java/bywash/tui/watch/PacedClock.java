package bywash.tui.watch;

import java.time.Instant;
import java.time.InstantSource;

/** Event time that runs a number of times faster than the wall clock, from a given moment. */
public final class PacedClock implements InstantSource {
    private static final long NOT_STARTED = Long.MIN_VALUE;

    private final Instant start;
    private final double times;
    private volatile long startNanos = NOT_STARTED;

    public PacedClock(Instant start, double times) {
        this.start = start;
        this.times = times;
    }

    /** Sets it going; until then it stands at its start. */
    public void go() {
        startNanos = System.nanoTime();
    }

    @Override
    public Instant instant() {
        if (startNanos == NOT_STARTED) {
            return start;
        }
        return start.plusNanos((long) ((System.nanoTime() - startNanos) * times));
    }
}
