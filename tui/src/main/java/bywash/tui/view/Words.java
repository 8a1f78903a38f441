package bywash.tui.view;

import bywash.rules.text.Figures;
import bywash.rules.text.Spans;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Times, spans and wrapped text, the same on every screen. */
public final class Words {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    private Words() {}

    /** Such as {@code 06:02}, {@code 2026-05-03 06:02} on another day than now: dates are ISO 8601 on screens as in reports and files. */
    public static String clock(Instant time, Instant now, ZoneId zone) {
        ZonedDateTime local = time.atZone(zone);
        ZonedDateTime today = now.atZone(zone);
        boolean day = local.toLocalDate().equals(today.toLocalDate());
        return (day ? CLOCK : DAY).format(local);
    }

    /** Such as {@code 45 s}, {@code 12 min}, {@code 3 h 5 min}, {@code 4 d 3 h}. */
    public static String span(Duration span) {
        return Spans.of(span);
    }

    /** A span in one unit, for a narrow column: {@code 45 s}, {@code 12 min}, {@code 1.9 h}, {@code 4 d}; never more than it is. */
    public static String shortSpan(Instant from, Instant to) {
        Duration span = Duration.between(from, to);
        if (span.toMinutes() < 90) {
            return span(span);
        }
        if (span.toHours() < 10) {
            return number(span.toMinutes() / 6 / 10.0, 1).replace(".0", "") + " h";
        }
        return span.toHours() < 48 ? span.toHours() + " h" : span.toDays() + " d";
    }

    public static String span(Instant from, Instant to) {
        return span(Duration.between(from, to));
    }

    public static String number(double value, int decimals) {
        return Double.isFinite(value) ? Figures.of(value, decimals) : "--";
    }

    /** Breaks at blanks into lines of at most this width; a longer word is broken inside. */
    public static List<String> wrap(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String part : text.strip().split("\\s+", -1)) {
            String word = part;
            while (word.length() > width) {
                if (line.length() > 0) {
                    lines.add(line.toString());
                    line.setLength(0);
                }
                lines.add(word.substring(0, width));
                word = word.substring(width);
            }
            if (line.length() > 0 && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 && !word.isEmpty() ? " " : "").append(word);
        }
        if (line.length() > 0) {
            lines.add(line.toString());
        }
        return lines;
    }
}
