package bywash.tui.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.site.Band;
import bywash.rules.site.Quantity;
import bywash.rules.site.Units;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

final class ViewTest {
    private static final Instant NOW = Instant.parse("2026-05-04T05:10:00Z");

    @Test
    void usUnits() {
        DisplayUnits us = new DisplayUnits(Units.US);
        assertEquals("10.0 in", us.height(254));
        assertEquals("100 gal", us.volume(378.5411784));
        assertEquals("-1.0 gal/min", us.netFlow(-3.785411784));
        assertEquals("68.0 F", us.value(Quantity.TEMPERATURE, 20));
        assertEquals("54 to 86", us.band(Quantity.TEMPERATURE, new Band(12, 30)));
        assertEquals(3.785411784, us.litres(1));
    }

    @Test
    void metricUnitsAndWhatIsUnknown() {
        DisplayUnits metric = new DisplayUnits(Units.METRIC);
        assertEquals("0.0 L/min", metric.netFlow(-0.01));
        assertEquals("+4.1 L/min", metric.netFlow(4.1));
        assertEquals("-- L/min", metric.netFlow(Double.NaN));
        assertEquals("-- L", metric.volume(Double.NaN));
        assertEquals("off", metric.value(Quantity.STATE, 0));
        assertEquals("above 5.0", metric.band(Quantity.DISSOLVED_OXYGEN, new Band(5, Double.POSITIVE_INFINITY)));
    }

    @Test
    void timesAreTheSitesOwn() {
        ZoneId zone = ZoneId.of("Europe/Dublin");
        assertEquals("06:02", Words.clock(NOW.minusSeconds(480), NOW, zone));
        assertEquals("2026-05-03 06:10", Words.clock(NOW.minus(Duration.ofDays(1)), NOW, zone));
        assertEquals("89 s", Words.span(Duration.ofSeconds(89)));
        assertEquals("2 h 5 min", Words.span(Duration.ofMinutes(125)));
        assertEquals("3 d 2 h", Words.span(Duration.ofHours(74)));
    }

    @Test
    void wrapsAtBlanksAndBreaksWhatIsTooLong() {
        assertEquals(List.of("shut the", "valve"), Words.wrap("shut  the valve", 9));
        assertEquals(List.of("a", "abcde", "fg b"), Words.wrap("a abcdefg b", 5));
        assertEquals(List.of(), Words.wrap("  ", 5));
    }

    @Test
    void trendKeepsTheLatestExactlyAndTheOlderAsMinutes() {
        TrendBuffer trends = new TrendBuffer(3);
        for (int i = 0; i < 5; i++) {
            trends.add("p", NOW.minusSeconds(45 - 10L * i), i);
        }
        trends.add("p", NOW, Double.NaN);
        List<Double> columns = trends.columns("p", NOW, Duration.ofSeconds(50), 5);
        assertEquals(List.of(2.0, 2.0, 2.0, 3.0, 4.0), columns, "what is given up is still there as the minute's mean");
        assertEquals(
                List.of(Double.NaN, Double.NaN),
                trends.columns("p", NOW.minusSeconds(600), Duration.ofSeconds(100), 2));
        assertTrue(
                trends.columns("other", NOW, Duration.ofSeconds(50), 2).stream().allMatch(v -> v.isNaN()));
    }
}
