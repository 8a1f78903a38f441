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
}
