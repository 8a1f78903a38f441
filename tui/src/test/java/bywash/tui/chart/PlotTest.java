package bywash.tui.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.tui.view.HistorySource.Bucket;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class PlotTest {
    private static final ZoneId DUBLIN = ZoneId.of("Europe/Dublin");

    private static List<Bucket> values(double... values) {
        List<Bucket> slices = new ArrayList<>();
        for (double value : values) {
            slices.add(Double.isNaN(value) ? Bucket.EMPTY : new Bucket(1, value, value, value));
        }
        return slices;
    }

    private static List<String> rows(char[][] cells) {
        return java.util.Arrays.stream(cells).map(String::new).toList();
    }

    @Test
    void aRampRisesInAscii() {
        assertEquals(
                List.of("   *", "  * ", " *  ", "*   "),
                rows(Cells.plot(values(0.5, 1.5, 2.5, 3.5), new Scale(0, 4), 4, false)));
    }

    @Test
    void aRampRisesInBrailleDotByDot() {
        // The dots of a cell are numbered by Unicode: left column 1, 2, 3, 7 from the top, right column 4, 5, 6, 8.
        assertEquals(List.of("\u2860\u280a"), rows(Cells.plot(values(0.5, 1.5, 2.5, 3.5), new Scale(0, 4), 1, true)));
    }

    @Test
    void aJumpIsJoinedAndTheRangeOfASliceIsFilled() {
        assertEquals(List.of(" *", " |", "* "), rows(Cells.plot(values(0.5, 2.5), new Scale(0, 3), 3, false)));
        List<Bucket> wide = List.of(new Bucket(9, 0.5, 1.5, 2.5));
        assertEquals(List.of("|", "*", "|"), rows(Cells.plot(wide, new Scale(0, 3), 3, false)));
    }

    @Test
    void aGapStaysOpenUnlessAReadingSpeaksForIt() {
        List<Bucket> gap = values(1, Double.NaN, Double.NaN, 4);
        assertEquals(gap, Gaps.bridged(gap, 2));
        assertEquals(values(1, 2, 3, 4), Gaps.bridged(gap, 3));
        assertEquals(List.of("*  *"), rows(Cells.plot(gap, new Scale(0, 5), 1, false)));
    }

    @Test
    void theScaleHoldsAllValuesAndKeepsNoiseFlat() {
        Scale scale = Scale.of(List.of(new Bucket(2, 6.9, 6.95, 7.0), Bucket.EMPTY), 0.5);
        assertEquals(6.7, scale.low(), 1e-12);
        assertEquals(7.2, scale.high(), 1e-12);
        assertEquals(0, scale.row(7.19, 4));
        assertEquals(-1, scale.row(7.21, 4));
        assertEquals(new Scale(0, 1), Scale.of(List.of(), 1));
        assertThrows(IllegalArgumentException.class, () -> new Scale(1, 1));
    }

    @Test
    void aWindowThatFollowsTheClockMovesByWholeColumns() {
        Instant now = Instant.parse("2026-05-04T05:10:00Z");
        Window window = Window.endingWith(now, Span.HOUR, 60);
        assertEquals(Instant.parse("2026-05-04T04:11:00Z"), window.from());
        assertEquals(window, Window.endingWith(now.plusSeconds(59), Span.HOUR, 60));
        assertEquals(
                window.from().plusSeconds(60),
                Window.endingWith(now.plusSeconds(60), Span.HOUR, 60).from());
        assertEquals(59, window.column(now));
        assertEquals(-1, window.column(window.from().minusSeconds(1)));
        assertEquals(60, window.column(window.to().plus(Duration.ofDays(3))));
    }

    @Test
    void theTimeAxisSpeaksTheSitesOwnClockAcrossTheChangeToSummerTime() {
        // In Ireland clocks went from 01:00 to 02:00 on 29 March 2026 (last Sunday of March, Directive 2000/84/EC).
        Window window = Window.endingWith(Instant.parse("2026-03-29T12:00:00Z"), Span.DAY, 192);
        List<String> labels = TimeAxis.ticks(window, Span.DAY, DUBLIN).stream()
                .map(TimeAxis.Tick::label)
                .toList();
        assertEquals(List.of("15:00", "18:00", "21:00", "Sun 29", "03:00", "06:00", "09:00", "12:00"), labels);
    }

    @Test
    void labelsNeitherTouchNorLeaveThePlot() {
        for (Span span : Span.values()) {
            for (int columns = 5; columns < 120; columns += 7) {
                Window window = Window.endingWith(Instant.parse("2026-05-04T05:10:00Z"), span, columns);
                int free = 0;
                for (TimeAxis.Tick tick : TimeAxis.ticks(window, span, DUBLIN)) {
                    assertTrue(tick.column() >= free);
                    free = tick.column() + 1 + tick.label().length();
                    assertTrue(free <= columns);
                }
            }
        }
    }
}
