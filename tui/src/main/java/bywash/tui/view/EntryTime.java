package bywash.tui.view;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** When something was done, as a grower types it: open for now, a time of today, a day, or a day with its time; local to the site. */
public final class EntryTime {
    /** What would be right. */
    public static final String RIGHT =
            "When: leave it open for now, or type a time that has been, such as 08:30 or 2026-05-03 08:30.";

    private static final Pattern SHAPE =
            Pattern.compile("(?:(\\d{4}-\\d{2}-\\d{2}|yesterday))?\\s*(?:(\\d{1,2}):(\\d{2}))?");
    private static final LocalTime NOON = LocalTime.of(12, 0);

    private EntryTime() {}

    /** The instant meant; null where it is none, or is yet to come. */
    public static @Nullable Instant parse(String text, Instant now, ZoneId zone) {
        if (text.isBlank()) {
            return now;
        }
        Matcher m = SHAPE.matcher(text.strip().toLowerCase(java.util.Locale.ROOT));
        if (!m.matches()) {
            return null;
        }
        LocalDate today = now.atZone(zone).toLocalDate();
        try {
            LocalDate day = m.group(1) == null
                    ? today
                    : m.group(1).equals("yesterday") ? today.minusDays(1) : LocalDate.parse(m.group(1));
            if (m.group(2) == null) {
                return whole(day, today, now, zone);
            }
            LocalTime time = LocalTime.of(Integer.parseInt(m.group(2)), Integer.parseInt(m.group(3)));
            return past(LocalDateTime.of(day, time).atZone(zone).toInstant(), now);
        } catch (DateTimeException e) {
            return null;
        }
    }

    /** A day without its time counts as its noon, today as now. */
    private static @Nullable Instant whole(LocalDate day, LocalDate today, Instant now, ZoneId zone) {
        return day.equals(today) ? now : past(day.atTime(NOON).atZone(zone).toInstant(), now);
    }

    private static @Nullable Instant past(Instant at, Instant now) {
        return at.isAfter(now) || at.isBefore(Instant.EPOCH) ? null : at;
    }
}
