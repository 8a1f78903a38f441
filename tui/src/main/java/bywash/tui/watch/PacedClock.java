package bywash.tui.watch;

import java.time.Instant;
import java.time.InstantSource;

/** Event time that runs a number of times faster than the wall clock, from a given moment. */
public final class PacedClock implements InstantSource {
    private final Instant start;
    private final double times;
    private final long startNanos;

    public PacedClock(Instant start, double times) {
        this.start = start;
        this.times = times;
        this.startNanos = System.nanoTime();
    }

    @Override
    public Instant instant() {
        return start.plusNanos((long) ((System.nanoTime() - startNanos) * times));
    }
}
