package bywash.ingest.feed;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.function.LongSupplier;

/**
 * The wall clock, but for steps back: event time may not run backwards, or every reading after the step would count as late
 * and the watch would be blind for as long as the step. After a step back it runs on evenly, ahead of the wall clock,
 * until that has caught up. A step forward is followed. Any thread may ask.
 */
public final class SteadyClock implements InstantSource {
    private static final Duration ONE_MILLISECOND = Duration.ofMillis(1);

    private final InstantSource wall;
    private final LongSupplier nanos;
    private Instant last;
    private long lastNanos;
    private Duration ahead = Duration.ZERO;

    /** Over the machine's clocks. */
    public SteadyClock() {
        this(InstantSource.system(), System::nanoTime);
    }

    /** @param nanos evenly running, as {@link System#nanoTime} */
    public SteadyClock(InstantSource wall, LongSupplier nanos) {
        this.wall = wall;
        this.nanos = nanos;
        this.last = wall.instant().truncatedTo(ChronoUnit.MILLIS);
        this.lastNanos = nanos.getAsLong();
    }

    /** Whole milliseconds; never before an instant given out earlier. */
    @Override
    public synchronized Instant instant() {
        long now = nanos.getAsLong();
        Instant there = wall.instant().truncatedTo(ChronoUnit.MILLIS);
        Instant even = last.plusNanos(Math.max(0, now - lastNanos)).truncatedTo(ChronoUnit.MILLIS);
        if (!there.isBefore(last)) {
            ahead = Duration.ZERO;
            last = there;
            lastNanos = now;
        } else if (even.isAfter(last)) {
            lastNanos += Duration.between(last, even).toNanos();
            last = even;
            ahead = Duration.between(there, last);
        } else {
            ahead = Duration.between(there, last);
        }
        return last;
    }

    /** How far this runs ahead of the wall clock since that was set back; zero when they agree. */
    public synchronized Duration ahead() {
        return ahead.compareTo(ONE_MILLISECOND) <= 0 ? Duration.ZERO : ahead;
    }
}
