package bywash.rules.detect;

import bywash.rules.detect.RampGlr.Candidate;
import org.jspecify.annotations.Nullable;

/**
 * Weighs what slopes of fill phases and the book of the beds say for a flow. A log likelihood ratio of 16 is about one
 * false alarm in e^16 independent looks; the spread of fill slopes beyond noise counts against it as a standing error of
 * the rate. Under siphons both views share one sum: the slope inside a phase and its level against those before are
 * independent, and a flow shows in both, while what spoils one of them seldom spoils the other.
 */
final class FlowEvidence {
    private static final double LOG_RATIO = 16;
    /** One vessel's slopes bear each other out by nothing else. */
    private static final double ALONE = 3;

    private static final double LEAST_OF_SLOPES = 5;
    private static final double MOST_OF_BOOK = 12;
    private static final double MOST_BESIDE_MEANS = 9;
    private static final double LEAST_BESIDE_MEANS = -9;
    /** By so much more than slopes of a site without beds both must reach. */
    private static final double WITH_BOOK = 9;

    private static final double WITHOUT_BOOK = 6;
    private static final double HINT = 3;

    static final double FLOOR_L_MIN = 0.35;
    static final double STEADY_SD_L_MIN = 0.05;

    private final RampGlr glr;
    private final FillPhase fill;
    private final BedBook book;
    private final boolean siphons;
    private final boolean resolved;

    /** @param resolved whether samples are near enough to tell drains from fills, where there are siphons */
    FlowEvidence(RampGlr glr, FillPhase fill, BedBook book, boolean siphons, boolean resolved) {
        this.glr = glr;
        this.fill = fill;
        this.book = book;
        this.siphons = siphons;
        this.resolved = resolved;
    }

    /** The likeliest ramp; null where there is none. */
    @Nullable
    Candidate best(boolean in) {
        return glr.best(in, standingSdLMin());
    }

    boolean convinces(@Nullable Candidate c, double nowMin, double noiseL) {
        if (c == null || siphons && !resolved || !enough(c)) {
            return false;
        }
        double rate = StrictMath.abs(c.rateLMin());
        return rate > FLOOR_L_MIN && rate * (nowMin - c.onsetMin()) > 3 + 2 * noiseL;
    }

    private boolean enough(Candidate c) {
        double slopes = c.logRatio(standingSdLMin());
        if (!siphons) {
            return slopes >= neededLogRatio();
        }
        if (slopes < LEAST_OF_SLOPES) {
            return false;
        }
        double both = slopes + StrictMath.min(MOST_OF_BOOK, ofBook(c.rateLMin() > 0 ? 1 : -1));
        double more = book.learned() ? WITH_BOOK : WITHOUT_BOOK;
        return both >= neededLogRatio() + more;
    }

    private double ofBook(int sign) {
        return book.logRatio(sign, fill.foresightSdLMin());
    }

    /** What slopes alone must reach where the book says nothing against them. */
    double neededLogRatio() {
        return LOG_RATIO * fill.caution() + (siphons ? 0 : ALONE);
    }

    /** Whether slopes or the book hint at water that comes in. */
    boolean hintsAtInflow() {
        Candidate in = best(true);
        return in != null && in.logRatio(standingSdLMin()) > HINT || ofBook(1) > HINT;
    }

    /**
     * What the book says for the flow that slow means show, or against it, as a log likelihood ratio: a step of a wrong guess is
     * not that flow, and beds that hold more or less than usual for a while are none.
     */
    double besideMeans(SlowWindow means, double nowMin) {
        double ratio = book.logRatioOf(onset -> means.rateSinceLMin(nowMin - onset), fill.foresightSdLMin());
        return StrictMath.max(LEAST_BESIDE_MEANS, StrictMath.min(MOST_BESIDE_MEANS, ratio));
    }

    /** Error of the learned slope itself, L/min. */
    double standingSdLMin() {
        double spread = StrictMath.max(0.6 * fill.cautiousSpreadLMin(), fill.foresightSdLMin());
        return StrictMath.max(STEADY_SD_L_MIN, spread + fill.startErrorLMin());
    }
}
