package bywash.rules.detect;

import bywash.rules.detect.RecentVolumes.Point;
import java.util.List;

/**
 * Finds when a level took up a slope that is known about: the least squares of two lines that meet, over all times at which
 * they may. Minutes, L, L/min.
 *
 * <p>Source: D. V. Hinkley, 1969, Inference about the intersection in two-phase regression, Biometrika 56(3), 495-504.
 */
final class Bend {
    /** The slope that is known about may be out by so much, one standard deviation: a flow may run. */
    private static final double SLOPE_SD_L_MIN = 4;

    private static final int STEPS_PER_SAMPLE = 3;
    private static final int FEWEST = 4;

    private Bend() {}

    /** The time of the change; NaN where there are too few points to tell. */
    static double timeMin(List<Point> points, double knownLMin, double noiseL) {
        if (points.size() < FEWEST) {
            return Double.NaN;
        }
        double first = points.get(0).tMin();
        double last = points.get(points.size() - 1).tMin();
        int steps = STEPS_PER_SAMPLE * (points.size() - 1);
        double best = Double.NaN;
        double least = Double.POSITIVE_INFINITY;
        for (int k = 1; k < steps; k++) {
            double at = first + (last - first) * k / steps;
            double misfit = misfit(points, at, knownLMin, noiseL);
            if (misfit < least) {
                least = misfit;
                best = at;
            }
        }
        return best;
    }

    /** Least squares over the level at the change and both slopes, the known one drawn to what is known. */
    private static double misfit(List<Point> points, double at, double known, double noiseL) {
        double ridge = noiseL * noiseL / (SLOPE_SD_L_MIN * SLOPE_SD_L_MIN);
        double n = points.size();
        double sk = 0;
        double sf = 0;
        double kk = ridge;
        double ff = 1e-9;
        double sy = 0;
        double ky = 0;
        double fy = 0;
        double yy = 0;
        for (Point p : points) {
            double t = p.tMin() - at;
            boolean isKnown = t > 0;
            double y = p.volumeL() - points.get(0).volumeL() - (isKnown ? known * t : 0);
            sy += y;
            yy += y * y;
            if (isKnown) {
                sk += t;
                kk += t * t;
                ky += t * y;
            } else {
                sf += t;
                ff += t * t;
                fy += t * y;
            }
        }
        double a = n - sk * sk / kk - sf * sf / ff;
        double b = sy - sk * ky / kk - sf * fy / ff;
        return yy - ky * ky / kk - fy * fy / ff - (a > 1e-9 ? b * b / a : 0);
    }
}
