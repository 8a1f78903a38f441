package bywash.rules.text;

import java.time.Duration;
import java.time.Instant;

/** Lengths of time in words, the same in alarms and on every screen. */
public final class Spans {
    private static final int MINUTE_S = 60;

    private Spans() {}

    /** Such as {@code 45 s}, {@code 12 min}, {@code 3 h 5 min}, {@code 4 d 3 h}; nothing less than none. */
    public static String of(Duration span) {
        long seconds = Math.max(0, span.getSeconds());
        if (seconds < 90) {
            return seconds + " s";
        }
        long minutes = seconds / MINUTE_S;
        if (minutes < 90) {
            return minutes + " min";
        }
        long hours = minutes / 60;
        return hours < 48 ? hours + " h " + minutes % 60 + " min" : hours / 24 + " d " + hours % 24 + " h";
    }

    /** Of minutes, 0 or more. */
    public static String ofMinutes(double minutes) {
        return of(Duration.ofMillis(StrictMath.round(minutes * 60_000)));
    }

    public static String of(Instant from, Instant to) {
        return of(Duration.between(from, to));
    }

    /** How far ahead something is that is reckoned: {@code in 6 min}; no reckoning is good to the second: {@code within a minute}. */
    public static String ahead(Instant now, Instant then) {
        return then.isBefore(now.plusSeconds(MINUTE_S)) ? "within a minute" : "in " + of(now, then);
    }
}
