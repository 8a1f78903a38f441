package bywash.tui.chart;

import java.time.Instant;

/**
 * A stretch of time laid out in columns. It begins and ends on whole columns, so that a plot that follows the clock moves
 * by one column at a time and stays still in between.
 *
 * @param from inclusive
 * @param columns at least 1
 * @param columnMs length of one column, ms
 */
public record Window(Instant from, int columns, long columnMs) {
    public Window {
        if (columns < 1 || columnMs < 1) {
            throw new IllegalArgumentException("window of " + columns + " columns of " + columnMs + " ms");
        }
    }

    /** The window of a span whose last column holds an instant. */
    public static Window endingWith(Instant last, Span span, int columns) {
        long columnMs = Math.max(1, span.length().toMillis() / columns);
        long end = Math.floorDiv(last.toEpochMilli(), columnMs) * columnMs + columnMs;
        return new Window(Instant.ofEpochMilli(end - columnMs * columns), columns, columnMs);
    }

    /** Exclusive. */
    public Instant to() {
        return start(columns);
    }

    /** When a column begins. */
    public Instant start(int column) {
        return from.plusMillis(column * columnMs);
    }

    /** The column of an instant; below 0 or from {@link #columns} on where it lies outside. */
    public int column(Instant at) {
        long offset = Math.floorDiv(at.toEpochMilli() - from.toEpochMilli(), columnMs);
        return (int) Math.max(-1, Math.min(columns, offset));
    }
}
