package bywash.rules.detect;

import bywash.rules.detect.RecentVolumes.Point;
import org.jspecify.annotations.Nullable;

/** Stretches in which some bed drains, and whether drains can explain them. */
final class DrainWatch {
    private static final double WINDOW_MIN = 1;
    private static final double SHARE_GAIN = 0.002;
    private static final double PHASE_GAIN = 0.01;
    private static final double LONGEST_FILL_MIN = 60;
    private static final int ENDLESS_AFTER = 15;
    private static final double ENDLESS_LEAST_L = 20;

    private final double bedsL;
    private final SlowRise slowRise;
    private double startMin = Double.NaN;
    private double startL;
    private double endMin = -1e9;
    private double longestMin;
    private int episodes;
    private double fillShare = 1;
    private double lengthMin;
    private double cubeMin3;
    private int phases;
    private double rateLMin = Double.NaN;

    DrainWatch(double bedsL, boolean pumpTold) {
        this.slowRise = new SlowRise(pumpTold);
        this.bedsL = bedsL;
    }

    boolean running() {
        return !Double.isNaN(startMin);
    }

    double startMin() {
        return startMin;
    }

    /** When last a drain was seen. */
    double endMin() {
        return endMin;
    }

    void begins(Point at) {
        double length = StrictMath.min(LONGEST_FILL_MIN, at.tMin() - endMin);
        if (length > 0) {
            double gain = StrictMath.max(PHASE_GAIN, 1.0 / ++phases);
            lengthMin += gain * (length - lengthMin);
            cubeMin3 += gain * (length * length * length - cubeMin3);
        }
        startMin = at.tMin();
        startL = at.volumeL();
    }

    /** A drain is seen. */
    void goesOn(double tMin) {
        endMin = tMin;
    }

    /** No drain is seen any more; {@code hold} keeps what was learned. */
    void over(boolean hold) {
        if (running() && !hold) {
            episodes++;
            longestMin = StrictMath.max(longestMin, endMin - startMin);
        }
        startMin = Double.NaN;
    }

    /** What runs now is not over and not known. */
    void forget() {
        startMin = Double.NaN;
        slowRise.forget();
    }

    /**
     * What slopes between drains tell in so many minutes, min^3: the sum of their cubed lengths, for each such slope has
     * a level of its own.
     */
    double slopesMin3(double minutes) {
        return phases == 0 ? minutes * minutes * minutes : minutes * fillShare * cubeMin3 / lengthMin;
    }

    /** Takes each volume while the pump runs. */
    void sample(Point p, RecentVolumes recent, double fillLMin, double noiseL, boolean hold) {
        fillShare += ((running() ? 0 : 1) - fillShare) * SHARE_GAIN;
        Point earlier = recent.earlier(WINDOW_MIN);
        if (earlier != null) {
            double minutes = p.tMin() - earlier.tMin();
            rateLMin = (p.volumeL() - earlier.volumeL()) / minutes - fillLMin;
            slowRise.rate(p.tMin(), rateLMin, 1.2 * noiseL / minutes, episodes, hold);
        }
    }

    /** Water that no drain explains: since when, L/min. */
    record Beyond(double sinceMin, double rateLMin) {}

    /** What no drain explains; null where drains may explain all. */
    @Nullable
    Beyond beyond(double nowMin, double sureL, double fillLMin, double noiseL) {
        if (!Double.isNaN(slowRise.foundSinceMin())) {
            return new Beyond(slowRise.foundSinceMin(), rateLMin);
        }
        if (!running()) {
            return null;
        }
        double span = nowMin - startMin;
        double rise = sureL - startL;
        boolean endless = episodes >= ENDLESS_AFTER && span > 1.5 * longestMin + 2 && rise > ENDLESS_LEAST_L;
        return endless || rise > bedsL + 6 * noiseL ? new Beyond(startMin, rise / span - fillLMin) : null;
    }
}
