package bywash.rules.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SpansTest {
    private static final Instant NOW = Instant.parse("2026-05-04T05:10:00Z");

    @ParameterizedTest
    @CsvSource({"-5, 0 s", "0, 0 s", "89, 89 s", "90, 1 min", "5399, 89 min", "5400, 1 h 30 min", "172800, 2 d 0 h"})
    void aSpanHasTheUnitThatFitsIt(long seconds, String words) {
        assertEquals(words, Spans.of(Duration.ofSeconds(seconds)));
    }

    @ParameterizedTest
    @CsvSource({"-5, within a minute", "0, within a minute", "59, within a minute", "60, in 60 s", "360, in 6 min"})
    void whatIsReckonedIsNotToldToTheSecond(long seconds, String words) {
        assertEquals(words, Spans.ahead(NOW, NOW.plusSeconds(seconds)));
    }

    /** As a screen tells the same span from two instants: never rounded up beside one that is not. */
    @ParameterizedTest
    @CsvSource({"7.6, 7 min", "1.4, 84 s", "-1, 0 s", "125.9, 2 h 5 min"})
    void minutesAreToldAsInstantsAre(double minutes, String words) {
        assertEquals(words, Spans.ofMinutes(minutes));
        assertEquals(words, Spans.of(NOW, NOW.plusMillis((long) (minutes * 60_000))));
    }
}
