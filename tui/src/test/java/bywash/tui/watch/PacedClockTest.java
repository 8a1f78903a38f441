package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class PacedClockTest {
    private static final Instant START = Instant.parse("2026-05-04T06:00:00Z");

    private long nanos = 5;
    private final PacedClock clock = new PacedClock(START, 90, () -> nanos);

    private void pass(double seconds) {
        nanos += (long) (seconds * 1e9);
    }

    @Test
    void standsUntilItIsSetGoingAndThenRunsFaster() {
        pass(3);
        assertEquals(START, clock.instant());
        clock.go();
        pass(2);
        assertEquals(START.plusSeconds(180), clock.instant());
    }

    /** A machine that stalls for half a minute loses half a minute of wall clock and none of the story. */
    @Test
    void runsOnFromItsBoundWithoutCatchingUp() {
        clock.holdAt(START.plusSeconds(10));
        pass(30);
        assertEquals(START.plusSeconds(10), clock.instant());
        clock.holdAt(START.plusSeconds(1000));
        pass(1);
        assertEquals(START.plusSeconds(100), clock.instant());
    }
}
