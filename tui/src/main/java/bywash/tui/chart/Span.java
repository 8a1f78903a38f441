package bywash.tui.chart;

import java.time.Duration;

/** How much time a plot shows. */
public enum Span {
    HOUR("hour", Duration.ofHours(1), Duration.ofMinutes(10)),
    SIX_HOURS("6 hours", Duration.ofHours(6), Duration.ofHours(1)),
    DAY("day", Duration.ofDays(1), Duration.ofHours(3)),
    WEEK("week", Duration.ofDays(7), Duration.ofDays(1)),
    MONTH("month", Duration.ofDays(30), Duration.ofDays(3)),
    SEASON("season", Duration.ofDays(120), Duration.ofDays(14));

    private final String word;
    private final Duration length;
    private final Duration tick;

    Span(String word, Duration length, Duration tick) {
        this.word = word;
        this.length = length;
        this.tick = tick;
    }

    public String word() {
        return word;
    }

    public Duration length() {
        return length;
    }

    /** Between labels of the time axis; whole days where it is a day or more. */
    Duration tick() {
        return tick;
    }

    /** The next shorter one; the shortest stays. */
    public Span shorter() {
        return values()[Math.max(0, ordinal() - 1)];
    }

    /** The next longer one; the longest stays. */
    public Span longer() {
        return values()[Math.min(values().length - 1, ordinal() + 1)];
    }
}
