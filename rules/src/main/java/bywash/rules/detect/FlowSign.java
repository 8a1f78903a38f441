package bywash.rules.detect;

import bywash.rules.detect.DrainWatch.Beyond;
import bywash.rules.detect.FlowSpan.Prior;
import bywash.rules.detect.RampGlr.Candidate;

/**
 * What gave a flow away: which way it goes, from when on it counts until its onset is weighed (min), and what is thought of
 * it by then.
 */
record FlowSign(Motion motion, double fromMin, Prior prior) {
    private static final double EARLY_WITH_SIPHONS_MIN = 15;
    private static final double EARLY_MIN = 5;

    /** Slopes between drains. */
    static FlowSign ofSlopes(Motion motion, Candidate c, boolean siphons) {
        return new FlowSign(motion, c.onsetMin(), new Prior(c.onsetMin(), earlyMin(siphons), 3, c.rateLMin(), 0.5));
    }

    /** A rise that no drain explains; where its rate is only guessed it is known no better than by means. */
    static FlowSign ofRise(Beyond beyond, boolean siphons) {
        return beyond.measured()
                ? new FlowSign(
                        Motion.IN,
                        beyond.sinceMin(),
                        new Prior(beyond.sinceMin(), earlyMin(siphons), 1.5, beyond.rateLMin(), 0.3))
                : ofMeans(Motion.IN, beyond.sinceMin(), beyond.rateLMin());
    }

    /** Means over many minutes. */
    static FlowSign ofMeans(Motion motion, double fromMin, double rateLMin) {
        return new FlowSign(motion, fromMin, new Prior(fromMin, 25, 10, rateLMin, 0.45));
    }

    /** A rise while the pump stands: it began between two times. */
    static FlowSign ofStandingPump(double fromMin, double toMin, double rateLMin) {
        return new FlowSign(Motion.IN, fromMin, new Prior(toMin, toMin - fromMin, 0.5, rateLMin, 0.4));
    }

    /** A flow that is known to have begun, or gone on, just then; signed. */
    static FlowSign known(double fromMin, double rateLMin) {
        return new FlowSign(rateLMin > 0 ? Motion.IN : Motion.OUT, fromMin, new Prior(fromMin, 0, 0, rateLMin, 0.5));
    }

    private static double earlyMin(boolean siphons) {
        return siphons ? EARLY_WITH_SIPHONS_MIN : EARLY_MIN;
    }
}
