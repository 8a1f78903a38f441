package bywash.ingest.recording;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/**
 * Times in recordings: ISO 8601, {@code 2026-05-04T06:00:10.000Z}. Reading also takes one to nine digits of fraction and an
 * offset ({@code +01:00}, {@code +0100}), also behind a Z as the stock client's JSON output has it ({@code Z+0100}: local
 * time with its offset). Years 1970 to 9999.
 */
public final class IsoTime {
    private static final int[] POWERS = {
        1_000_000_000, 100_000_000, 10_000_000, 1_000_000, 100_000, 10_000, 1000, 100, 10, 1
    };

    private IsoTime() {}

    /** Returns the instant, or null where the text is no such time. */
    public static @Nullable Instant parse(String text) {
        if (text.length() < 20 || text.length() > 40 || !shapeHolds(text)) {
            return null;
        }
        int year = number(text, 0, 4);
        int month = number(text, 5, 2);
        int day = number(text, 8, 2);
        int hour = number(text, 11, 2);
        int minute = number(text, 14, 2);
        int second = number(text, 17, 2);
        if (year < 1970 || month < 1 || month > 12 || day < 1 || hour < 0 || hour > 23 || minute < 0 || minute > 59) {
            return null;
        }
        if (second < 0
                || second > 59
                || (day > 28 && day > LocalDate.of(year, month, 1).lengthOfMonth())) {
            return null;
        }
        int end = fractionEnd(text);
        int offset = end < 0 ? Integer.MIN_VALUE : offsetSeconds(text, end);
        int nanos = end <= 20 ? 0 : number(text, 20, end - 20) * POWERS[end - 20];
        if (offset == Integer.MIN_VALUE) {
            return null;
        }
        long days = LocalDate.of(year, month, day).toEpochDay();
        return Instant.ofEpochSecond(days * 86_400 + hour * 3600L + minute * 60L + second - offset, nanos);
    }

    private static boolean shapeHolds(String t) {
        char separator = t.charAt(10);
        return t.charAt(4) == '-'
                && t.charAt(7) == '-'
                && (separator == 'T' || separator == 't' || separator == ' ')
                && t.charAt(13) == ':'
                && t.charAt(16) == ':';
    }

    /** Where the fraction of a second ends; 19 where there is none, -1 where it is malformed. */
    private static int fractionEnd(String t) {
        if (t.charAt(19) != '.' && t.charAt(19) != ',') {
            return 19;
        }
        int end = 20;
        while (end < t.length() && t.charAt(end) >= '0' && t.charAt(end) <= '9') {
            end++;
        }
        return end == 20 || end > 29 ? -1 : end;
    }

    private static int offsetSeconds(String t, int from) {
        int at = from;
        if (at < t.length() && (t.charAt(at) == 'Z' || t.charAt(at) == 'z')) {
            at++;
            if (at == t.length()) {
                return 0;
            }
        }
        int left = t.length() - at;
        if (left < 3 || left > 6 || left == 4 || (t.charAt(at) != '+' && t.charAt(at) != '-')) {
            return Integer.MIN_VALUE;
        }
        int hours = number(t, at + 1, 2);
        int minutes = left == 3 ? 0 : number(t, t.length() - 2, 2);
        boolean colonHolds = left != 6 || t.charAt(at + 3) == ':';
        if (hours < 0 || hours > 18 || minutes < 0 || minutes > 59 || !colonHolds) {
            return Integer.MIN_VALUE;
        }
        int seconds = hours * 3600 + minutes * 60;
        return t.charAt(at) == '-' ? -seconds : seconds;
    }

    private static int number(String t, int from, int digits) {
        int n = 0;
        for (int i = from; i < from + digits; i++) {
            int d = t.charAt(i) - '0';
            if (d < 0 || d > 9) {
                return -1;
            }
            n = n * 10 + d;
        }
        return n;
    }

    /** With three digits of a second, or six or nine where they are needed to be exact. */
    public static String format(Instant time) {
        LocalDateTime t = LocalDateTime.ofEpochSecond(time.getEpochSecond(), 0, ZoneOffset.UTC);
        if (t.getYear() < 1970 || t.getYear() > 9999) {
            throw new IllegalArgumentException("time " + time + " is outside the years 1970 to 9999");
        }
        StringBuilder s = new StringBuilder(30);
        digits(s, t.getYear(), 4).append('-');
        digits(s, t.getMonthValue(), 2).append('-');
        digits(s, t.getDayOfMonth(), 2).append('T');
        digits(s, t.getHour(), 2).append(':');
        digits(s, t.getMinute(), 2).append(':');
        digits(s, t.getSecond(), 2).append('.');
        int nanos = time.getNano();
        if (nanos % 1_000_000 == 0) {
            digits(s, nanos / 1_000_000, 3);
        } else if (nanos % 1000 == 0) {
            digits(s, nanos / 1000, 6);
        } else {
            digits(s, nanos, 9);
        }
        return s.append('Z').toString();
    }

    private static StringBuilder digits(StringBuilder s, int value, int width) {
        for (int place = POWERS[10 - width]; place > 0; place /= 10) {
            s.append((char) ('0' + value / place % 10));
        }
        return s;
    }
}
