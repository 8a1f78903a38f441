package bywash.rules.detect;

import java.util.ArrayDeque;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The volumes of the last minutes. */
final class RecentVolumes {
    private static final double KEPT_MIN = 2.5;
    private static final int FEWEST = 4;

    private final ArrayDeque<Point> points = new ArrayDeque<>();
    private double sureL = Double.NaN;

    /** A volume at a time. */
    record Point(double tMin, double volumeL) {}

    void add(Point p) {
        points.addLast(p);
        while (points.size() > FEWEST && p.tMin() - points.getFirst().tMin() > KEPT_MIN) {
            points.removeFirst();
        }
        sureL = leastOfLast();
    }

    void clear() {
        points.clear();
        sureL = Double.NaN;
    }

    /** The youngest that is at least so old against the last; null where there is none. */
    @Nullable
    Point earlier(double minutes) {
        Point found = null;
        double lastMin = points.isEmpty() ? Double.NaN : points.getLast().tMin();
        for (Point each : points) {
            if (!(lastMin - each.tMin() >= minutes)) {
                break;
            }
            found = each;
        }
        return found;
    }

    /**
     * The last point before the level began to change by less than {@code tiltLMin}, among those since {@code fromMin}: the
     * highest of what is left when a steady rise of so much is taken off. Null where there is none.
     */
    @Nullable
    Point highest(double fromMin, double tiltLMin) {
        return furthest(fromMin, tiltLMin, 1);
    }

    /** The last point before the level began to change by more than {@code tiltLMin}; null where there is none. */
    @Nullable
    Point lowest(double fromMin, double tiltLMin) {
        return furthest(fromMin, tiltLMin, -1);
    }

    private @Nullable Point furthest(double fromMin, double tiltLMin, int side) {
        Point found = null;
        double most = Double.NEGATIVE_INFINITY;
        for (Point each : points) {
            double far = side * (each.volumeL() - tiltLMin * each.tMin());
            if (each.tMin() >= fromMin && (far > most || side > 0 && far == most)) {
                found = each;
                most = far;
            }
        }
        return found;
    }

    /** The youngest that is not younger than {@code tMin}; null where there is none. */
    @Nullable
    Point atOrBefore(double tMin) {
        Point found = null;
        for (Point each : points) {
            if (each.tMin() <= tMin) {
                found = each;
            }
        }
        return found;
    }

    /** Those younger than {@code tMin}, oldest first. */
    List<Point> after(double tMin) {
        return points.stream().filter(each -> each.tMin() > tMin).toList();
    }

    /** The least of the last {@value #FEWEST}: a level that holds, not a spike. NaN without any. */
    double sureL() {
        return sureL;
    }

    private double leastOfLast() {
        double least = Double.NaN;
        int skip = points.size() - FEWEST;
        for (Point each : points) {
            if (skip-- <= 0) {
                least = Double.isNaN(least) ? each.volumeL() : StrictMath.min(least, each.volumeL());
            }
        }
        return least;
    }

    /** The mean of the last {@value #FEWEST}; NaN without any. */
    double meanL() {
        double sum = 0;
        int skip = StrictMath.max(0, points.size() - FEWEST);
        int n = points.size() - skip;
        for (Point each : points) {
            if (skip-- <= 0) {
                sum += each.volumeL();
            }
        }
        return n > 0 ? sum / n : Double.NaN;
    }
}
