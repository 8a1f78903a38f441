package bywash.tui.watch;

import java.time.Instant;
import java.time.InstantSource;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Event time that runs a number of times faster than the wall clock, from a given moment, and not beyond a bound. Where
 * it has waited at the bound it runs on from there, so that a slow machine makes a slow story and no gap in it. One thread
 * sets it; any may ask.
 */
public final class PacedClock implements InstantSource {
    private record Leg(Instant from, long nanos, Instant bound) {}

    private final Instant start;
    private final double times;
    private final LongSupplier nanos;
    private volatile @Nullable Leg leg;

    public PacedClock(Instant start, double times) {
        this(start, times, System::nanoTime);
    }

    PacedClock(Instant start, double times, LongSupplier nanos) {
        this.start = start;
        this.times = times;
        this.nanos = nanos;
    }

    /** Sets it going; until then it stands at its start. */
    public void go() {
        leg = new Leg(start, nanos.getAsLong(), Instant.MAX);
    }

    /** From here on it stands when it reaches this moment. Sets it going where it is not. */
    public void holdAt(Instant moment) {
        leg = new Leg(instant(), nanos.getAsLong(), moment);
    }

    @Override
    public Instant instant() {
        Leg now = leg;
        if (now == null) {
            return start;
        }
        Instant paced = now.from().plusNanos((long) ((nanos.getAsLong() - now.nanos()) * times));
        return paced.isBefore(now.bound()) ? paced : now.bound();
    }
}
