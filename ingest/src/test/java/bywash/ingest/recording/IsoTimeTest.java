package bywash.ingest.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.time.Instant;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class IsoTimeTest {
    @ParameterizedTest
    @CsvSource({
        "2026-05-04T06:00:10Z, 2026-05-04T06:00:10Z",
        "2026-05-04T06:00:10.5Z, 2026-05-04T06:00:10.5Z",
        "2026-05-04T06:00:10.123456789Z, 2026-05-04T06:00:10.123456789Z",
        "2026-05-04T07:00:10.123456Z+0100, 2026-05-04T06:00:10.123456Z",
        "2026-05-04T06:00:10+0000, 2026-05-04T06:00:10Z",
        "2026-05-04T07:00:10+01:00, 2026-05-04T06:00:10Z",
        "2026-05-03T23:30:10.000-06:30, 2026-05-04T06:00:10Z",
        "2026-05-04 08:00:10+02, 2026-05-04T06:00:10Z",
        "2024-02-29T00:00:00Z, 2024-02-29T00:00:00Z"
    })
    void readsTheFormsThatRecordingsHave(String text, String expected) {
        assertEquals(Instant.parse(expected), IsoTime.parse(text));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "2026-05-04T06:00:10",
                "2026-05-04T06:00:10.Z",
                "2026-05-04T06:00:10.1234567890Z",
                "2026-02-30T06:00:10Z",
                "2026-13-04T06:00:10Z",
                "2026-05-04T24:00:10Z",
                "2026-05-04T06:00:60Z",
                "2026-05-04T06:00:10+1:00",
                "2026-05-04T06:00:10+0160",
                "2026-05-04T06:00:10Zulu",
                "1969-12-31T23:59:59Z",
                "1777874410000000000000"
            })
    void givesNothingForWhatIsNoTime(String text) {
        assertNull(IsoTime.parse(text));
    }

    @Test
    void writesThreeDigitsOrAsManyAsAreNeeded() {
        assertEquals("2026-05-04T06:00:10.000Z", IsoTime.format(Instant.parse("2026-05-04T06:00:10Z")));
        assertEquals("2026-05-04T06:00:10.000100Z", IsoTime.format(Instant.parse("2026-05-04T06:00:10.0001Z")));
        assertEquals("2026-05-04T06:00:10.000000001Z", IsoTime.format(Instant.parse("2026-05-04T06:00:10.000000001Z")));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2})
    void everyTimeReadsBackAsItself(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 5000; i++) {
            Instant at = Instant.ofEpochSecond(random.nextLong(253_000_000_000L), random.nextInt(1_000_000_000));
            assertEquals(at, IsoTime.parse(IsoTime.format(at)));
        }
    }
}
