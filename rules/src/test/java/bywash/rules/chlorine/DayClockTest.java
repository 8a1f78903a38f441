package bywash.rules.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.time.ZoneId;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Held against the time library of the JDK, whose zone data are the IANA Time Zone Database. */
class DayClockTest {
    @ParameterizedTest
    @ValueSource(strings = {"Europe/London", "Australia/Lord_Howe", "Asia/Kathmandu", "UTC", "-09:30"})
    void tellsTheLocalTimeThroughEveryChangeOfTheClocks(String name) {
        ZoneId zone = ZoneId.of(name);
        DayClock clock = new DayClock(zone);
        Instant end = Instant.parse("2027-05-01T00:00:00Z");
        for (Instant at = Instant.parse("2026-03-01T00:00:00Z"); at.isBefore(end); at = at.plusSeconds(601)) {
            assertEquals(expected(at, zone), clock.secondOfDay(at), at::toString);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"America/New_York", "Pacific/Apia"})
    void timesMayComeInAnyOrder(String name) {
        ZoneId zone = ZoneId.of(name);
        DayClock clock = new DayClock(zone);
        SplittableRandom random = new SplittableRandom(11);
        for (int i = 0; i < 5_000; i++) {
            Instant at = Instant.ofEpochSecond(
                    random.nextLong(-2_000_000_000L, 4_000_000_000L), random.nextInt(1_000_000_000));
            assertEquals(expected(at, zone), clock.secondOfDay(at), at::toString);
        }
    }

    private static int expected(Instant at, ZoneId zone) {
        return at.atZone(zone).toLocalTime().toSecondOfDay();
    }
}
