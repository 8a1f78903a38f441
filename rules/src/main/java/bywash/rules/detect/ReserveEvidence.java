package bywash.rules.detect;

import bywash.rules.detect.RampGlr.Candidate;
import bywash.rules.text.Figures;
import bywash.rules.text.Sentence;
import bywash.rules.text.Spans;
import org.jspecify.annotations.Nullable;

/**
 * What a reserve's level says of water that gets into another vessel: how much faster it falls, or how much more slowly it
 * fills, than without. L/min, one standard error.
 *
 * @param missingLMin what has gone missing from the reserve since the onset; NaN where that is not known
 * @param words what it does, such as {@code reserve falls at 4.0 +/- 0.2 L/min}
 * @param lost what its level shows to have left it since the onset, by a fall that was found; null without
 */
record ReserveEvidence(
        double missingLMin,
        double seLMin,
        String words,
        @Nullable Lost lost) {
    private static final double BEFORE_MIN = 20;
    private static final double SURE_SIGMAS = 3;
    private static final double LEAST_MIN = 2;
    private static final double SETTLED_MIN = 1;
    private static final double LEAST_FILL_L_MIN = 0.35;
    private static final int FILLS_COMPARED = 3;

    /**
     * Litres that a fall took, with one standard error.
     *
     * @param untilMin when it ended, min; NaN while it goes on
     */
    record Lost(String reserve, double litres, double se, double untilMin) {}

    private ReserveEvidence(double missingLMin, double seLMin, String words) {
        this(missingLMin, seLMin, words, null);
    }

    boolean known() {
        return Double.isFinite(missingLMin) && Double.isFinite(seLMin);
    }

    /** @param into the vessel that the water gets into */
    static ReserveEvidence of(String reserve, @Nullable VesselFlow flow, VesselFlow into, double nowMin) {
        if (flow == null || flow.motion() == Motion.LEARNING) {
            return new ReserveEvidence(Double.NaN, Double.NaN, reserve + " is not known to hold or to lose water");
        }
        double onsetMin = into.onsetMin();
        PastFlows.Past past = flow.past();
        if (flow.motion() == Motion.STEADY && past != null && fellMeanwhile(past, onsetMin)) {
            return fell(reserve, past, into, nowMin);
        }
        Slope now = flow.slope(onsetMin + SETTLED_MIN / 2, nowMin);
        boolean fills =
                flow.motion() == Motion.IN || now.rateLMin() > LEAST_FILL_L_MIN && now.rateLMin() > 3 * now.seLMin();
        return fills ? filling(reserve, flow, onsetMin, nowMin) : resting(reserve, flow, onsetMin, nowMin);
    }

    /** Whether a fall that is over went on for most of the time since an onset. */
    private static boolean fellMeanwhile(PastFlows.Past past, double onsetMin) {
        double since = past.untilMin() - onsetMin;
        return past.litres() < 0 && since > 0 && past.untilMin() - StrictMath.max(past.fromMin(), onsetMin) > since / 2;
    }

    /**
     * A reserve that fell until a while ago. Its own level tells the end of a flow from it sooner than that of a vessel with
     * siphons does: until the water is seen to come on without it, it stays the one that lost it.
     */
    private static ReserveEvidence fell(String reserve, PastFlows.Past past, VesselFlow into, double nowMin) {
        Slope since = into.slope(past.untilMin() + SETTLED_MIN, nowMin);
        boolean comesOn = since.minutes() >= LEAST_MIN
                && since.rateLMin() > SURE_SIGMAS * since.seLMin()
                && since.rateLMin() > into.rateLMin() / 2;
        double fall = -past.rateLMin();
        double se = past.seL() / StrictMath.max(1, past.untilMin() - past.fromMin());
        String fell = Sentence.of("%s fell at %.1f +/- %.1f L/min", reserve, fall, 2 * se);
        if (comesOn) {
            Lost lost = lost(reserve, past, past.untilMin(), into.onsetMin());
            String words = Sentence.of(
                    "%s, holds now, and still water comes; %.0f +/- %.0f L came from there",
                    fell, lost.litres(), 2 * lost.se());
            return new ReserveEvidence(Double.NaN, Double.NaN, words, lost);
        }
        return new ReserveEvidence(fall, se, fell + " until " + Spans.ofMinutes(nowMin - past.untilMin()) + " ago");
    }

    /** Of a fall, what it took after an onset. */
    private static Lost lost(String reserve, PastFlows.Past fall, double untilMin, double onsetMin) {
        double minutes = fall.untilMin() - fall.fromMin();
        double early = StrictMath.max(0, onsetMin - fall.fromMin());
        double share = minutes > 0 ? StrictMath.max(0, 1 - early / minutes) : 0;
        return new Lost(reserve, -fall.litres() * share, fall.seL(), untilMin);
    }

    private static ReserveEvidence resting(String reserve, VesselFlow flow, double onsetMin, double nowMin) {
        boolean out = flow.motion() == Motion.OUT;
        Candidate c = flow.views().since(onsetMin);
        if (!out && (c == null || !Double.isFinite(c.seLMin()))) {
            return new ReserveEvidence(Double.NaN, Double.NaN, reserve + " has not been watched for long enough");
        }
        double fall = out || c == null ? -flow.rateLMin() : -c.rateLMin();
        double se = out || c == null ? flow.rateSeLMin() : c.seLMin();
        boolean rises = Figures.of(fall, 1).startsWith("-");
        String words = Sentence.of(
                "%s %s at %.1f +/- %.1f L/min", reserve, rises ? "rises" : "falls", StrictMath.abs(fall), 2 * se);
        return new ReserveEvidence(
                fall, se, words, out ? lost(reserve, flow.moved(nowMin), Double.NaN, onsetMin) : null);
    }

    /** While it is filled: against the same filling before the onset, else against earlier fillings. */
    private static ReserveEvidence filling(String reserve, VesselFlow flow, double onsetMin, double nowMin) {
        double since = flow.motion() == Motion.IN ? flow.onsetMin() : onsetMin;
        Slope now = flow.slope(StrictMath.max(since, onsetMin) + SETTLED_MIN, nowMin);
        Slope before = flow.slope(StrictMath.max(since + SETTLED_MIN, onsetMin - BEFORE_MIN), onsetMin - SETTLED_MIN);
        if (before.minutes() < LEAST_MIN) {
            before = earlier(flow);
        }
        String fills = Sentence.of("%s fills at %.1f +/- %.1f L/min", reserve, now.rateLMin(), 2 * now.seLMin());
        if (now.minutes() < LEAST_MIN || before.minutes() < LEAST_MIN) {
            return new ReserveEvidence(
                    Double.NaN, Double.NaN, fills + ", and how fast it would fill without a leak is not known");
        }
        double missing = before.rateLMin() - now.rateLMin();
        double se = StrictMath.hypot(before.seLMin(), now.seLMin());
        boolean slower = missing > 0.05;
        return new ReserveEvidence(
                missing,
                se,
                fills
                        + (slower
                                ? Sentence.of(", %.1f +/- %.1f less than before", missing, 2 * se)
                                : ", as fast as before"));
    }

    /** How fast the last fillings were; they differ as the supply's pressure does. */
    private static Slope earlier(VesselFlow flow) {
        double n = 0;
        double mean = 0;
        double squares = 0;
        double minutes = 0;
        int skip = -FILLS_COMPARED;
        for (PastFlows.Past past : flow.pasts()) {
            skip += past.litres() > 0 ? 1 : 0;
        }
        for (PastFlows.Past past : flow.pasts()) {
            if (past.litres() > 0 && skip-- <= 0) {
                n++;
                double miss = past.rateLMin() - mean;
                mean += miss / n;
                squares += miss * (past.rateLMin() - mean);
                minutes += past.untilMin() - past.fromMin();
            }
        }
        double spread = n > 1 ? StrictMath.sqrt(squares / (n - 1)) : 0;
        return new Slope(mean, StrictMath.max(spread, 0.08 * mean), minutes);
    }
}
