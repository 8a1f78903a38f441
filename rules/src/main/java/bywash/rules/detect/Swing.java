package bywash.rules.detect;

import java.util.ArrayDeque;

/**
 * How high and how low a volume swung within the last half hour, for a vessel that siphons fill and empty: it spills first at
 * the top of a swing and runs dry first at its bottom. Minutes, litres.
 */
final class Swing {
    private static final double KEPT_MIN = 30;

    private record Extremes(double tMin, double lowL, double highL) {}

    private final ArrayDeque<Extremes> minutes = new ArrayDeque<>();

    void add(double tMin, double volumeL) {
        Extremes last = minutes.peekLast();
        if (last != null && tMin - last.tMin() < 1) {
            minutes.removeLast();
            minutes.addLast(new Extremes(
                    last.tMin(), StrictMath.min(last.lowL(), volumeL), StrictMath.max(last.highL(), volumeL)));
        } else {
            minutes.addLast(new Extremes(tMin, volumeL, volumeL));
        }
        while (tMin - minutes.getFirst().tMin() > KEPT_MIN) {
            minutes.removeFirst();
        }
    }

    void clear() {
        minutes.clear();
    }

    /** The top of the swing as it would be now, with what a flow has brought since {@code onsetMin}; NaN without levels. */
    double highL(double nowMin, double onsetMin, double rateLMin) {
        double high = Double.NaN;
        for (Extremes each : minutes) {
            double now = each.highL() + rateLMin * (nowMin - StrictMath.max(onsetMin, each.tMin()));
            high = Double.isNaN(high) ? now : StrictMath.max(high, now);
        }
        return high;
    }

    /** The bottom of the swing likewise. */
    double lowL(double nowMin, double onsetMin, double rateLMin) {
        double low = Double.NaN;
        for (Extremes each : minutes) {
            double now = each.lowL() + rateLMin * (nowMin - StrictMath.max(onsetMin, each.tMin()));
            low = Double.isNaN(low) ? now : StrictMath.min(low, now);
        }
        return low;
    }
}
