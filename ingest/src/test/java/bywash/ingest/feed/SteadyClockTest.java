package bywash.ingest.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.time.Duration;
import java.time.Instant;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SteadyClockTest {
    private static final Instant START = Instant.parse("2026-05-04T06:00:00Z");

    private Instant wall = START;
    private long nanos = 7;
    private final SteadyClock clock = new SteadyClock(() -> wall, () -> nanos);

    private void pass(Duration time) {
        wall = wall.plus(time);
        nanos += time.toNanos();
    }

    @Test
    void followsTheWallClockAndItsStepsForward() {
        pass(Duration.ofSeconds(3));
        assertEquals(START.plusSeconds(3), clock.instant());
        wall = wall.plusSeconds(3600);
        assertEquals(START.plusSeconds(3603), clock.instant());
        assertEquals(Duration.ZERO, clock.ahead());
    }

    @Test
    void runsOnEvenlyAfterAStepBackUntilTheWallClockHasCaughtUp() {
        pass(Duration.ofSeconds(100));
        assertEquals(START.plusSeconds(100), clock.instant());
        wall = wall.minusSeconds(60);
        pass(Duration.ofSeconds(10));
        assertEquals(START.plusSeconds(110), clock.instant());
        assertEquals(Duration.ofSeconds(60), clock.ahead());
        wall = wall.plusSeconds(60);
        pass(Duration.ofSeconds(1));
        assertEquals(START.plusSeconds(111), clock.instant());
        assertEquals(Duration.ZERO, clock.ahead());
    }

    /** Asked a thousand times a millisecond it still advances. */
    @Test
    void advancesHoweverOftenItIsAsked() {
        wall = wall.minusSeconds(60);
        for (int i = 0; i < 5000; i++) {
            nanos += 1000;
            wall = wall.plusNanos(1000);
            assertFalse(clock.instant().isBefore(START));
        }
        assertEquals(START.plusMillis(5), clock.instant());
    }

    /** Odd fractions of a millisecond are not lost. */
    @Test
    void keepsTimeAfterAStepBack() {
        clock.instant();
        wall = wall.minusSeconds(600);
        for (int i = 0; i < 10_000; i++) {
            pass(Duration.ofNanos(1_900_001));
            clock.instant();
        }
        assertEquals(START.plusMillis(19_000), clock.instant());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void neverRunsBackwards(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Instant before = clock.instant();
        for (int i = 0; i < 10_000; i++) {
            pass(Duration.ofMillis(random.nextLong(200)));
            if (random.nextInt(50) == 0) {
                wall = wall.plusSeconds(random.nextLong(-4000, 4000));
            }
            Instant now = clock.instant();
            assertFalse(now.isBefore(before), now + " after " + before);
            before = now;
        }
    }
}
