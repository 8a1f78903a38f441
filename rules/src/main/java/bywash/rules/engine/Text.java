package bywash.rules.engine;

import java.time.Duration;
import java.time.Instant;

/** Numbers and times in words, the same everywhere. */
final class Text {
    private Text() {}

    /** Rounded for an alarm line. */
    static double round(double value, int decimals) {
        double scale = 1;
        for (int i = 0; i < decimals; i++) {
            scale *= 10;
        }
        return Math.rint(value * scale) / scale + 0.0;
    }

    /** Such as {@code 45 s}, {@code 12 min}, {@code 3 h 5 min}. */
    static String span(Instant from, Instant to) {
        long seconds = Math.max(0, Duration.between(from, to).getSeconds());
        if (seconds < 120) {
            return seconds + " s";
        }
        long minutes = seconds / 60;
        return minutes < 120 ? minutes + " min" : minutes / 60 + " h " + minutes % 60 + " min";
    }
}
