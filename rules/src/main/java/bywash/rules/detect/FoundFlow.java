package bywash.rules.detect;

import bywash.rules.detect.RampGlr.Candidate;
import org.jspecify.annotations.Nullable;

/** A flow that was found: since when, how fast, and whether it still runs. Minutes and L/min. */
final class FoundFlow {
    private static final double TELLS_RATE = 5;
    private static final double HINTS_RATE = 1.5;
    private static final double SLOW_RATE_ERROR = 0.3;
    private static final double LARGE_RATE_ERROR = 0.4;
    private static final double LEFT_OF_CLAIM = 0.3;

    private @Nullable Candidate flow;
    private @Nullable SlopeFit lately;
    private double slowRate;
    private double onsetMin;
    private double mostRate;
    private double leastRate;

    /** Now, and when the last sample came. */
    record Moment(double nowMin, double lastMin) {}

    void begin(Candidate c, RampGlr glr) {
        flow = c;
        onsetMin = c.onsetMin();
        glr.keep(c);
        lately = null;
        mostRate = 0;
    }

    /** A flow that stood out of the drains: its rate is known within {@value #LARGE_RATE_ERROR} of itself. */
    void beginLarge(double fromMin, double rateLMin) {
        begin(fromMin, rateLMin);
        leastRate = (1 - LARGE_RATE_ERROR) * rateLMin;
    }

    /** A flow that means over many minutes show. */
    void begin(double fromMin, double rateLMin) {
        flow = null;
        leastRate = 0;
        slowRate = rateLMin;
        onsetMin = fromMin;
        lately = null;
        mostRate = 0;
    }

    void clear() {
        flow = null;
        lately = null;
        mostRate = 0;
        slowRate = 0;
    }

    /** A flow that slow means showed gets its rate from fill phases as soon as these tell it, else from newer means. */
    void refine(boolean in, RampGlr glr, double standingSd, SlowDrift slow) {
        if (flow != null) {
            return;
        }
        Candidate c = glr.best(in, standingSd);
        if (c != null && StrictMath.abs(c.rateLMin()) < leastRate) {
            return;
        }
        if (c != null && c.logRatio(standingSd) > TELLS_RATE) {
            flow = c;
            glr.keep(c);
        } else if (leastRate == 0) {
            double newer = c != null && c.logRatio(standingSd) > HINTS_RATE ? c.rateLMin() : slow.rateLMin(in);
            slowRate = Double.isNaN(newer) ? slowRate : newer;
        }
    }

    /** Water that flows must be somewhere: a flow of so many litres that leaves the mean level where it was is none. */
    boolean contradicted(double nowMin, double leastL, SlowDrift slow) {
        double claimedL = rateLMin() * (nowMin - onsetMin);
        return StrictMath.abs(claimedL) >= leastL && slow.changeL(nowMin - onsetMin) / claimedL < LEFT_OF_CLAIM;
    }

    /** Whether the last minutes show clearly less than half its rate, which itself fades once it has stopped. */
    boolean stopped(int sign, Moment moment, double leastMin, RampGlr glr) {
        if (lately == null) {
            lately = glr.mark(moment.lastMin());
            return false;
        }
        double age = moment.nowMin() - lately.onsetMin();
        mostRate = StrictMath.max(mostRate, StrictMath.abs(rateLMin()));
        double rate = (mostRate + StrictMath.abs(rateLMin())) / 2;
        boolean sure = lately.seLMin() < 0.08 * rate + 0.1;
        if (age > leastMin && sure && lately.rateLMin() * sign + 2 * lately.seLMin() < 0.5 * rate) {
            return true;
        }
        if (age > 20 || (age > 8 && sure)) {
            lately = glr.mark(moment.lastMin());
        }
        return false;
    }

    /** Signed. */
    double rateLMin() {
        return flow != null ? flow.rateLMin() : slowRate;
    }

    /** One standard error. */
    double rateSeLMin() {
        double share = leastRate > 0 ? LARGE_RATE_ERROR / 2 : SLOW_RATE_ERROR;
        return flow != null ? flow.seLMin() : StrictMath.abs(slowRate) * share;
    }

    double onsetMin() {
        return onsetMin;
    }
}
