package bywash.tui.watch;

import bywash.ingest.feed.SteadyClock;
import java.time.Duration;
import java.time.Instant;

/** The simulated box's clocks: one that somebody may set, one that runs evenly, and what the watch makes of both. */
final class Machine {
    private Instant wall;
    private long nanos;
    private final SteadyClock clock;
    private Instant now;

    Machine(Instant start) {
        wall = start;
        clock = new SteadyClock(() -> wall, () -> nanos);
        now = start;
    }

    SteadyClock clock() {
        return clock;
    }

    /** The watch's own time. */
    Instant now() {
        return now;
    }

    void pass(Duration time) {
        wall = wall.plus(time);
        nanos += time.toNanos();
        now = clock.instant();
    }

    /** Somebody, or something, sets the clock. Returns whether the watch's time has leapt forward with it. */
    boolean set(Duration by) {
        wall = wall.plus(by);
        Instant before = now;
        now = clock.instant();
        return now.isAfter(before);
    }
}
