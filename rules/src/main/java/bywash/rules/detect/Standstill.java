package bywash.rules.detect;

import bywash.rules.detect.RecentVolumes.Point;
import java.util.ArrayDeque;

/**
 * Guesses from the level of a sump with siphon beds whether the pump runs, where no state probe tells: while it runs, beds
 * fill and the level falls; a level that stands has no pump. A slow siphon may hold the level for some minutes as well, so
 * the longest time is learned for which it ever stood with the pump running.
 */
final class Standstill {
    private static final double FIT_MIN = 1.5;
    private static final int FEWEST = 4;
    private static final double FLAT_SHARE = 0.25;
    private static final double FLAT_SIGMAS = 2.5;
    private static final double RUN_SHARE = 0.5;
    private static final double RUN_MIN = 1;

    private static final double MAYBE_MIN = 2;
    private static final double LEAST_MIN = 3;
    private static final double START_LONGEST_MIN = 3;
    private static final double LONGER = 1.25;
    private static final double MORE_MIN = 0.75;
    /** So long no siphons hold a level: what stands longer is not learned as theirs. */
    private static final double MOST_MIN = 9;

    /** What was long ago counts less: halved in a week. */
    private static final double FADE_PER_MIN = StrictMath.log(2) / (7 * 1440);

    private final ArrayDeque<Point> recent = new ArrayDeque<>();
    private double sinceMin = Double.NaN;
    private double longestMin = START_LONGEST_MIN;
    private double lastMin = Double.NaN;

    /** A volume; the fill slope that is usual with the pump, L/min, the noise, and whether the pump is held to run. */
    void add(double tMin, double volumeL, double fillLMin, double noiseL, boolean runs) {
        longestMin *= Double.isNaN(lastMin) ? 1 : 1 - FADE_PER_MIN * StrictMath.min(60, tMin - lastMin);
        lastMin = tMin;
        recent.addLast(new Point(tMin, volumeL));
        while (recent.size() > FEWEST && tMin - recent.getFirst().tMin() > FIT_MIN + 1e-6) {
            recent.removeFirst();
        }
        Slope slope = slope(noiseL);
        boolean flat =
                StrictMath.abs(slope.rateLMin()) < FLAT_SHARE * StrictMath.abs(fillLMin) + FLAT_SIGMAS * slope.seLMin();
        if (flat && Double.isNaN(sinceMin)) {
            sinceMin = recent.getFirst().tMin();
        } else if (!flat) {
            if (runs && stoodMin() < MOST_MIN) {
                longestMin = StrictMath.max(longestMin, stoodMin());
            }
            sinceMin = Double.NaN;
        }
    }

    private double stoodMin() {
        return Double.isNaN(sinceMin) ? 0 : lastMin - sinceMin;
    }

    /** What stands now is not known. */
    void clear() {
        recent.clear();
        sinceMin = Double.NaN;
    }

    /** Whether the level has stood for longer than siphons hold it. */
    boolean stands() {
        return stoodMin() > StrictMath.max(LEAST_MIN, StrictMath.min(MOST_MIN, LONGER * longestMin + MORE_MIN));
    }

    /** Whether the level stands, so that the pump may have stopped. */
    boolean maybe() {
        return stoodMin() > MAYBE_MIN;
    }

    /** Whether the level falls again as it does with beds filling. */
    boolean runs(double fillLMin, double noiseL) {
        Slope slope = slope(noiseL);
        return recent.size() >= FEWEST
                && slope.minutes() >= RUN_MIN
                && slope.rateLMin() < RUN_SHARE * fillLMin - slope.seLMin();
    }

    private Slope slope(double noiseL) {
        SlopeFit fit = new SlopeFit(Double.NEGATIVE_INFINITY);
        recent.forEach(p -> fit.add(p.tMin(), p.volumeL(), noiseL * noiseL));
        double minutes = recent.isEmpty()
                ? 0
                : recent.getLast().tMin() - recent.getFirst().tMin();
        return new Slope(fit.rateLMin(), fit.seLMin(), minutes);
    }
}
