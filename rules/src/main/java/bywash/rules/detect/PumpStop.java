package bywash.rules.detect;

import bywash.rules.detect.RecentVolumes.Point;

/**
 * A pump that stands, as one vessel feels it: pipes and beds drain back into it, a known and bounded rise that slows down;
 * what rises on, or beyond all that they hold, comes from elsewhere. Minutes, L, L/min.
 */
final class PumpStop {
    private static final double STILL_AFTER_MIN = 20;
    private static final double RESTART_GRACE_MIN = 10;
    /** Pipes have mostly drained back so long after a pump stop. */
    private static final double DRAINED_BACK_MIN = 4;

    private static final double RISES_ON_MIN = 6;
    private static final double LEAST_RISE_L_MIN = 1.5;
    private static final double RISE_SIGMAS = 4.5;
    private static final double STEADY_SHARE = 0.8;
    private static final double UNEVEN_SHARE = 0.5;
    private static final double BEYOND_SIGMAS = 6;

    /** Pipes that empty or fill have done so this long after it was seen to slow down. */
    private static final double TAIL_MIN = 7;

    private static final double TURN_OVER_MIN = 2;

    private final double holdL;
    private double offMin = Double.NaN;
    private double offL;
    private double resumeMin = -1e9;
    private int slowedDown;

    /** How fast the vessel rose or fell between two times beyond its usual slope. */
    interface Slopes {
        Slope between(double fromMin, double toMin);
    }

    /** @param holdL what pipes and beds can give back */
    PumpStop(double holdL) {
        this.holdL = holdL;
    }

    boolean stands() {
        return !Double.isNaN(offMin);
    }

    /** When it stopped; NaN while it runs. */
    double offMin() {
        return offMin;
    }

    /** The pump runs or stands from now on, with so much in the vessel. */
    void turned(double tMin, boolean on, double volumeL) {
        offMin = on ? Double.NaN : tMin;
        offL = volumeL;
        resumeMin = tMin + (on ? RESTART_GRACE_MIN : STILL_AFTER_MIN);
    }

    /** A sudden flow of that direction has slowed down as pipes do: what is left of it is not heard. */
    void slowedDown(double nowMin, boolean rises) {
        resumeMin = nowMin + TAIL_MIN;
        slowedDown = rises ? 1 : -1;
    }

    /** Whether the level is left alone while pipes and beds empty or fill. */
    boolean suspends(double tMin) {
        return tMin < resumeMin;
    }

    /** Looks, once the level is heard again, whether pipes that drained back fill again already. */
    void listen(Point p, RecentVolumes recent) {
        Point earlier = recent.earlier(TURN_OVER_MIN);
        if (slowedDown == 0 || suspends(p.tMin()) || earlier == null) {
            return;
        }
        double rate = (p.volumeL() - earlier.volumeL()) / (p.tMin() - earlier.tMin());
        if (rate * slowedDown < 0 && PumpGuess.sudden(rate)) {
            resumeMin = p.tMin() + TAIL_MIN;
            slowedDown = 0;
        }
    }

    /** When pipes have mostly drained back. */
    double drainedBackMin() {
        return offMin + DRAINED_BACK_MIN;
    }

    /** More than can drain back. */
    boolean beyondHold(double sureL, double noiseL) {
        return stands() && sureL - offL > holdL + BEYOND_SIGMAS * noiseL;
    }

    /** The rise since the stop, over its time. */
    double wholeLMin(double nowMin, double volumeL) {
        return (volumeL - offL) / StrictMath.max(1, nowMin - offMin);
    }

    /**
     * The steady rise of a vessel whose pump has stood for a while; NaN where there is none.
     *
     * @param drainMin so long a siphon may drain where nobody tells that the pump runs again; 0 where it is told
     */
    double risesOnLMin(double nowMin, Slopes slopes, double drainMin) {
        double from = drainedBackMin();
        double middle = (from + nowMin) / 2;
        if (!(nowMin - from >= RISES_ON_MIN) || nowMin - middle < drainMin) {
            return Double.NaN;
        }
        Slope then = slopes.between(middle, nowMin);
        double rate = then.rateLMin();
        boolean steady = rate > LEAST_RISE_L_MIN
                && rate > RISE_SIGMAS * then.seLMin()
                && rate > STEADY_SHARE * slopes.between(from, middle).rateLMin()
                && even(then, slopes.between(middle, (middle + nowMin) / 2))
                && even(then, slopes.between((middle + nowMin) / 2, nowMin));
        return steady ? rate : Double.NaN;
    }

    /** A part of a rise that is neither much slower nor much faster than the whole: a siphon that trips late is. */
    private static boolean even(Slope whole, Slope part) {
        double by = StrictMath.abs(part.rateLMin() - whole.rateLMin());
        return by < UNEVEN_SHARE * whole.rateLMin() + 2 * part.seLMin();
    }
}
