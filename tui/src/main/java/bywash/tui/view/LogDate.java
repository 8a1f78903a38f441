package bywash.tui.view;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Days in the site's time zone, as a grower goes from one to another. */
public final class LogDate {
    private static final Pattern TYPED = Pattern.compile("(?:(\\d{4})-)?(\\d{1,2})-(\\d{1,2})");

    private LogDate() {}

    /** The end of the day typed, such as {@code 2026-05-03}, or {@code 05-03} for the latest such day; null for no day. */
    public static @Nullable Instant end(String typed, Frame frame) {
        Matcher m = TYPED.matcher(typed.strip());
        if (!m.matches()) {
            return null;
        }
        LocalDate today = today(frame);
        try {
            int year = m.group(1) == null ? today.getYear() : Integer.parseInt(m.group(1));
            LocalDate day = LocalDate.of(year, Integer.parseInt(m.group(2)), Integer.parseInt(m.group(3)));
            return endOf(m.group(1) == null && day.isAfter(today) ? day.minusYears(1) : day, frame);
        } catch (DateTimeException e) {
            return null;
        }
    }

    /** The end of a day before or after the one that ends at an instant; from now on where that is null. */
    public static Instant moved(@Nullable Instant end, int days, Frame frame) {
        LocalDate day = end == null
                ? today(frame)
                : end.minusMillis(1).atZone(zone(frame)).toLocalDate();
        return endOf(day.plusDays(days), frame);
    }

    /** The day that ends at an instant. */
    public static String words(Instant end, Frame frame) {
        return end.minusMillis(1).atZone(zone(frame)).toLocalDate().toString();
    }

    private static LocalDate today(Frame frame) {
        return frame.at().atZone(zone(frame)).toLocalDate();
    }

    private static Instant endOf(LocalDate day, Frame frame) {
        return day.plusDays(1).atStartOfDay(zone(frame)).toInstant();
    }

    private static ZoneId zone(Frame frame) {
        return frame.snapshot().site().timeZone();
    }
}
