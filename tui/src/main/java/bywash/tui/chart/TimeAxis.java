package bywash.tui.chart;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Labels under a plot, at round times of the site's own clock. */
public final class TimeAxis {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d", Locale.ENGLISH);
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT);

    /** One label and the column it stands under. */
    public record Tick(int column, String label) {}

    private TimeAxis() {}

    /** From left to right; those that would touch the one before are left out. */
    public static List<Tick> ticks(Window window, Span span, ZoneId zone) {
        List<Tick> ticks = new ArrayList<>();
        int free = 0;
        for (ZonedDateTime at = first(window.from(), span, zone);
                at.toInstant().isBefore(window.to());
                at = next(at, span.tick())) {
            int column = window.column(at.toInstant());
            String label = label(at, span);
            if (column >= free && column + 1 + label.length() <= window.columns()) {
                ticks.add(new Tick(column, label));
                free = column + label.length() + 3;
            }
        }
        return ticks;
    }

    private static ZonedDateTime first(Instant from, Span span, ZoneId zone) {
        ZonedDateTime at = from.atZone(zone).toLocalDate().atStartOfDay(zone);
        while (at.toInstant().isBefore(from)) {
            at = next(at, span.tick());
        }
        return at;
    }

    private static ZonedDateTime next(ZonedDateTime at, Duration tick) {
        return at.toLocalDateTime().plus(tick).atZone(at.getZone());
    }

    private static String label(ZonedDateTime at, Span span) {
        return switch (span) {
            case HOUR, SIX_HOURS -> CLOCK.format(at);
            case DAY -> at.getHour() == 0 ? DAY.format(at) : CLOCK.format(at);
            case WEEK -> DAY.format(at);
            case MONTH, SEASON -> DATE.format(at);
        };
    }
}
