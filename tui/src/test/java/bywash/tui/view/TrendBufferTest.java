package bywash.tui.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.tui.view.HistorySource.Bucket;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

final class TrendBufferTest {
    private static final Instant NOW = Instant.parse("2026-05-04T05:10:00Z");

    /** One value every 30 s over 20 days: the value is the day's number. */
    private static TrendBuffer twentyDays() {
        TrendBuffer trends = new TrendBuffer(100);
        for (int i = 20 * 24 * 120; i > 0; i--) {
            Instant at = NOW.minusSeconds(30L * i);
            trends.add("p", at, (at.getEpochSecond() - NOW.getEpochSecond()) / 86_400.0);
        }
        return trends;
    }

    @Test
    void aSeasonIsThereAsHoursAndTheMeansAreRight() {
        List<Bucket> days = twentyDays().buckets("p", NOW.minus(Duration.ofDays(30)), NOW, 30);
        assertEquals(0, days.get(8).count());
        for (int day = 11; day < 30; day++) {
            assertEquals(day - 30 + 0.5, days.get(day).mean(), 1 / 24.0, "to an hour");
            assertTrue(days.get(day).low() <= day - 29.9 && days.get(day).high() >= day - 29.1);
        }
    }

    @Test
    void noColumnIsEmptyWhereReadingsCameHoweverFineTheColumns() {
        TrendBuffer trends = twentyDays();
        for (Duration span : new Duration[] {Duration.ofHours(1), Duration.ofDays(1), Duration.ofDays(7)}) {
            List<Bucket> columns = trends.buckets("p", NOW.minus(span), NOW, 100);
            assertTrue(columns.stream().allMatch(b -> b.count() > 0), span.toString());
        }
    }

    @Test
    void readingsAreNeitherLostNorCountedTwiceWhereColumnsAreWholeMinutes() {
        List<Bucket> hours = twentyDays().buckets("p", NOW.minus(Duration.ofHours(10)), NOW, 10);
        hours.forEach(b -> assertEquals(120, b.count()));
    }

    @Test
    void aGapStaysAGap() {
        TrendBuffer trends = new TrendBuffer(100);
        trends.add("p", NOW.minusSeconds(3500), 1);
        trends.add("p", NOW.minusSeconds(100), 2);
        List<Bucket> columns = trends.buckets("p", NOW.minusSeconds(3600), NOW, 6);
        assertEquals(
                List.of(1, 0, 0, 0, 0, 1), columns.stream().map(Bucket::count).toList());
    }
}
