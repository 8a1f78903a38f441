package bywash.rules.detect;

import org.jspecify.annotations.Nullable;

/**
 * Measures a declared release: by the reserve's fall where it has a level, else by the rise of the vessel that is topped up.
 * Minutes, L, L/min into that vessel; errors are one standard error.
 */
final class ReleaseMeter {
    private static final double LOOK_MIN = 8;
    private static final double LEVEL_ERRORS = 1.2;
    private static final double MEAN_ERRORS = 0.8;
    private static final double CHECKED_SHARE = 0.5;

    private final VesselFlow target;
    private final @Nullable VesselFlow reserve;
    private final VesselFlow meter;
    private final double startL;
    private SlopeFit measured;
    private @Nullable SlopeFit reserveRate;
    private SlopeFit lately;
    private double enteredL;
    private double enteredSeL;

    /** From now on; {@code reserve} is null where the source has no level. */
    ReleaseMeter(VesselFlow target, @Nullable VesselFlow reserve, double startMin) {
        this.target = target;
        boolean metered = reserve != null && !Double.isNaN(reserve.views().volumeL());
        this.reserve = metered ? reserve : null;
        this.meter = this.reserve == null ? target : this.reserve;
        target.planned(true);
        this.startL = meter.views().recentL();
        this.measured = target.views().mark(startMin);
        if (this.reserve != null) {
            this.reserve.planned(true);
        }
        this.lately = meter.views().mark(startMin);
    }

    boolean byReserve() {
        return reserve != null;
    }

    /** Whether anything is known of it yet. */
    boolean known() {
        return reserve != null || Double.isFinite(measured.seLMin());
    }

    /** What has come in since the start; where the vessel itself tells, only while it is held to {@code run}. */
    void count(double elapsedMin, boolean run) {
        if (reserve != null) {
            enteredL = StrictMath.max(0, startL - reserve.views().volumeL());
            enteredSeL = LEVEL_ERRORS * reserve.views().noiseL();
        } else if (run) {
            enteredL = StrictMath.max(0, measured.rateLMin()) * elapsedMin;
            double se = StrictMath.hypot(measured.seLMin(), target.views().standingSdLMin()) * elapsedMin;
            enteredSeL = Double.isFinite(se) ? se : 0;
        }
    }

    /** The hose has run empty after the end: the reserve's mean tells. */
    void countAll() {
        if (reserve != null) {
            enteredL = StrictMath.max(0, startL - reserve.views().recentL());
            enteredSeL = MEAN_ERRORS * reserve.views().noiseL();
        }
    }

    double enteredL() {
        return enteredL;
    }

    double enteredSeL() {
        return enteredSeL;
    }

    /** What both levels do is as planned from here on, or no more. */
    void planned(boolean runs) {
        target.planned(runs);
        if (reserve != null) {
            reserve.planned(runs);
        }
    }

    /** The line is said to be shut: what runs from a little later on is measured anew. */
    void ended(double fromMin) {
        planned(false);
        measured = target.views().mark(fromMin);
        reserveRate = reserve == null ? null : reserve.views().mark(fromMin);
    }

    /** Begins the last minutes anew once they are old. */
    void renew(double nowMin) {
        if (nowMin - lately.onsetMin() > LOOK_MIN) {
            lately = meter.views().markAnew(lately, nowMin);
        }
    }

    /** How fast it came in the last minutes; with the error of the usual slope. */
    Slope lately(double nowMin) {
        double rate = reserve == null ? lately.rateLMin() : -lately.rateLMin();
        double se = StrictMath.hypot(lately.seLMin(), meter.views().standingSdLMin());
        return new Slope(rate, se, nowMin - lately.onsetMin());
    }

    /** How fast it comes, by whichever level tells it more surely. */
    double rateLMin() {
        SlopeFit byReserve = surestByReserve();
        return byReserve == null ? measured.rateLMin() : -byReserve.rateLMin();
    }

    double rateSeLMin() {
        SlopeFit byReserve = surestByReserve();
        return byReserve == null ? measured.seLMin() : byReserve.seLMin();
    }

    /** The same, with what the usual slope may be out by where the vessel itself tells. */
    double checkedSeLMin() {
        double se = rateSeLMin();
        return surestByReserve() != null
                ? se
                : StrictMath.hypot(se, CHECKED_SHARE * target.views().standingSdLMin());
    }

    private @Nullable SlopeFit surestByReserve() {
        SlopeFit byReserve = reserveRate;
        return byReserve != null && byReserve.seLMin() < measured.seLMin() ? byReserve : null;
    }

    /** The line is open: what still runs is followed like any other flow. */
    void follow(double fromMin, double rateLMin) {
        meter.follow(fromMin, meter == target ? rateLMin : -rateLMin);
    }

    /** What follows the flow of an open line. */
    VesselFlow followed() {
        return meter;
    }

    /** What flowed after the end flows no more. */
    void rebase() {
        target.rebase();
    }
}
