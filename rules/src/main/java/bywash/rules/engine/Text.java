package bywash.rules.engine;

import bywash.rules.text.Spans;
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

    /** Two spans, the unit once where it is that of both. */
    private static String range(String low, String high) {
        int lowUnit = low.indexOf(' ');
        String unit = low.substring(lowUnit);
        boolean same = high.substring(high.indexOf(' ')).equals(unit);
        return (same ? low.substring(0, lowUnit) : low) + " to " + high;
    }

    /** Such as {@code 40 min (31 to 56 min)}: a time to reach something at a rate that has an error of its own. */
    static String span(Instant from, Instant to, double rate, double standardError) {
        double seconds = Math.max(0, Duration.between(from, to).getSeconds());
        double r = Math.abs(rate);
        double error = 2 * Math.max(0, standardError);
        if (!(r > 0) || !(error > 0) || seconds == 0) {
            return Spans.of(from, to);
        }
        String soonest = Spans.of(from, from.plusSeconds((long) (seconds * r / (r + error))));
        if (error >= 0.9 * r) {
            return Spans.of(from, to) + " (" + soonest + " or more)";
        }
        String latest = Spans.of(from, from.plusSeconds((long) (seconds * r / (r - error))));
        return Spans.of(from, to) + " (" + range(soonest, latest) + ")";
    }
}
