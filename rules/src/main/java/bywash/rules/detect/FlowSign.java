package bywash.rules.detect;

import bywash.rules.detect.DrainWatch.Beyond;
import bywash.rules.detect.FlowSpan.Prior;
import bywash.rules.detect.FlowSpan.Search;
import bywash.rules.detect.RampGlr.Candidate;

/**
 * What gave a flow away: which way it goes, from when on it counts until its onset is weighed (min), what is thought of
 * it before the slopes are heard, and where its rate is looked for.
 */
record FlowSign(Motion motion, double fromMin, Prior prior, Search search) {
    private static final double EARLY_WITH_SIPHONS_MIN = 15;
    private static final double EARLY_MIN = 5;
    /** What open valves and leaks bring, before any slope is heard: 1 to 40 L/min in nineteen of twenty. No source. */
    private static final double USUAL_L_MIN = 6;

    private static final double USUAL_LOG_SD = 1;
    private static final double LOOKED_FOR_SHARE = 0.5;

    private FlowSign(Motion motion, double fromMin, Prior prior) {
        this(motion, fromMin, prior, Search.of(prior));
    }

    /**
     * Slopes between drains. The rate that gave the flow away was the steepest of many short looks, and in the first hours
     * lies at twice the truth or more: it says where to look, but is no knowledge beside the slopes that it came from.
     */
    static FlowSign ofSlopes(Motion motion, Candidate c, boolean siphons) {
        double usual = StrictMath.copySign(USUAL_L_MIN, c.rateLMin());
        Search search = new Search(c.rateLMin(), LOOKED_FOR_SHARE * StrictMath.abs(c.rateLMin()));
        return new FlowSign(
                motion, c.onsetMin(), new Prior(c.onsetMin(), earlyMin(siphons), 3, usual, USUAL_LOG_SD), search);
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
