package bywash.rules.husbandry.daily;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;

final class RecentMinutesTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");
    private static final Duration HALF_HOUR = Duration.ofMinutes(30);

    private final RecentMinutes minutes = new RecentMinutes();

    private void reading(long second, double value) {
        minutes.reading("ph", T0.plusSeconds(second), value);
    }

    @Test
    void theLastWholeMinuteIsTheOneBeforeThatOfTheTime() {
        reading(5, 6.0);
        reading(35, 7.0);
        reading(65, 9.0);
        Optional<PastMinutes.Minute> before = minutes.before("ph", T0.plusSeconds(70), HALF_HOUR);
        assertEquals(Optional.of(new PastMinutes.Minute(T0, 6.5)), before);
        assertEquals(
                Optional.of(new PastMinutes.Minute(T0.plusSeconds(60), 9)),
                minutes.before("ph", T0.plusSeconds(120), HALF_HOUR));
        assertTrue(minutes.before("ph", T0.plusSeconds(59), HALF_HOUR).isEmpty());
    }

    @Test
    void aMinuteLongerAgoThanAskedForIsNone() {
        reading(5, 6.0);
        assertTrue(minutes.before("ph", T0.plusSeconds(1800), HALF_HOUR).isPresent());
        assertTrue(minutes.before("ph", T0.plusSeconds(1801), HALF_HOUR).isEmpty());
    }

    @Test
    void aMeanWeighsEveryReadingTheSame() {
        minutes.minute("ph", T0, 3, 6.0);
        reading(60, 8);
        reading(125, 100);
        assertEquals((3 * 6.0 + 8) / 4, minutes.mean("ph", T0, T0.plusSeconds(130)), 1e-12);
        assertTrue(Double.isNaN(minutes.mean("ph", T0.plusSeconds(1), T0.plusSeconds(59))));
    }

    @Test
    void whatIsOlderThanItsReachIsForgotten() {
        reading(0, 6.0);
        reading(RecentMinutes.REACH.toSeconds() + 60, 7);
        assertTrue(Double.isNaN(minutes.mean("ph", T0, T0.plusSeconds(600))));
    }
}
