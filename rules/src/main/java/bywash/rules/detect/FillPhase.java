package bywash.rules.detect;

import java.util.ArrayDeque;

/**
 * Tells fill from drain in a sump whose beds run on siphons, and learns the fill slope.
 *
 * <p>While all beds fill, the sump falls at the pump's flow; a drain is a rise far above that. The usual fill slope is
 * the lower quartile of half-minute slopes, then refined by whole fill phases and held while water moves unplanned. A
 * phase is learned from only {@value #LAG_MIN} minutes later, so that a flow is judged by slopes from before it began.
 */
final class FillPhase {
    private static final double DRAIN_SIGMAS = 3.5;
    private static final double DRAIN_LEAST_L_MIN = 13;
    private static final double TURN_SHARE = 0.8;
    /** A flow of so much is taken for a drain for as long as it runs. */
    static final double SURE_DRAIN_L_MIN = 18;

    private static final double LEAST_LOOK_MIN = 0.6;
    private static final double MOST_LOOK_MIN = 1.6;
    private static final int PHASES_LEARNED = 8;
    private static final double START_ERROR = 0.08;
    private static final int HISTORY = 256;
    private static final double MEMORY_MIN = 120;
    private static final int PROMPT_PHASES = 20;
    private static final double LAG_MIN = 60;
    private static final double CAUTION_PHASES = 20;
    private static final double EARLY_PHASES = 12;
    /** Slopes over several phases bear each other out: less is asked of them than of one vessel without beds. */
    private static final double BEDS_SHARE = 0.82;

    private static final double DOUBTED_SPREAD = 0.6;
    private static final double LEAST_SPREAD = 0.1;

    private record Phase(double endMin, double slope, double se, double foretold) {}

    private final Foresight foresight = new Foresight();
    private final ArrayDeque<Phase> lagging = new ArrayDeque<>();

    private final boolean siphons;
    private final double[] slopes = new double[HISTORY];
    private int slopeCount;
    private final double[] first = new double[PROMPT_PHASES];
    private double roughLMin = Double.NaN;
    private double fillLMin;
    private double spreadLMin = 0.3;
    private int phases;
    private double phaseMin = Double.NaN;
    private double sumW;
    private double sumWs;
    private double n;
    private double sumT;
    private double sumV;
    private double sumTt;
    private double sumTv;
    private double originMin;
    private double endMin;

    FillPhase(boolean siphons) {
        this.siphons = siphons;
    }

    boolean siphons() {
        return siphons;
    }

    /** Whether the slope from which change is judged is known. */
    boolean learned() {
        return !siphons || phases >= PHASES_LEARNED;
    }

    boolean roughlyLearned() {
        return !siphons || slopeCount >= 60;
    }

    double fillLMin() {
        if (!siphons) {
            return 0;
        }
        return phases >= PHASES_LEARNED ? fillLMin : roughLMin;
    }

    /** How much fill slopes differ from phase to phase beyond noise, L/min. */
    double spreadLMin() {
        return siphons ? spreadLMin : 0;
    }

    /** How far the slope may be out by wandering since it was learned, L/min. */
    double foresightSdLMin() {
        return foresight.sdLMin();
    }

    /** How much more than usual must be seen while few phases were. */
    double caution() {
        return siphons ? BEDS_SHARE + EARLY_PHASES / StrictMath.max(1.0, phases) : 1;
    }

    /** The same, wider while few phases were seen. */
    double cautiousSpreadLMin() {
        return spreadLMin() * (1 + CAUTION_PHASES / StrictMath.max(1.0, phases));
    }

    /** The slope that all begins with may be wrong by a share of itself: it holds for the first phases, then soon fades. */
    double startErrorLMin() {
        double share = PHASES_LEARNED / StrictMath.max(PHASES_LEARNED, (double) phases);
        return siphons && phases >= PHASES_LEARNED ? START_ERROR * share * share * StrictMath.abs(fillLMin) : 0;
    }

    /** Minutes over which a drain stands out of noise. */
    double lookBackMin(double noiseL) {
        double needed = DRAIN_SIGMAS * 1.2 * noiseL / DRAIN_LEAST_L_MIN;
        return StrictMath.max(LEAST_LOOK_MIN, StrictMath.min(MOST_LOOK_MIN, needed));
    }

    /** Whether a rise over {@code minutes} is a drain. */
    boolean draining(double riseL, double minutes, double noiseL) {
        if (!siphons || !roughlyLearned()) {
            return false;
        }
        double above = riseL - fillLMin() * minutes;
        return above > StrictMath.max(DRAIN_SIGMAS * noiseL * 1.2, DRAIN_LEAST_L_MIN * minutes);
    }

    /** Halfway between a fill and the slowest drain: where one turns into the other, the level passes through this slope. */
    double turnLMin() {
        return fillLMin() + TURN_SHARE * DRAIN_LEAST_L_MIN;
    }

    /** A slope over about half a minute, for the rough start. */
    void rough(double slopeLMin) {
        if (!siphons || phases >= PHASES_LEARNED) {
            return;
        }
        slopes[slopeCount % HISTORY] = slopeLMin;
        slopeCount++;
        if (slopeCount % 10 == 0 && slopeCount >= 60) {
            double[] sorted = java.util.Arrays.copyOf(slopes, StrictMath.min(slopeCount, HISTORY));
            java.util.Arrays.sort(sorted);
            roughLMin = sorted[sorted.length / 4];
        }
    }

    /** What was learned is wrong: learn it again, and trust it less. */
    void relearn() {
        phases = 0;
        slopeCount = 0;
        lagging.clear();
        spreadLMin = StrictMath.max(spreadLMin, DOUBTED_SPREAD);
    }

    /** One volume inside a fill phase. */
    void inside(double tMin, double volumeL) {
        if (n == 0) {
            originMin = tMin;
        }
        endMin = tMin;
        double t = tMin - originMin;
        n++;
        sumT += t;
        sumV += volumeL;
        sumTt += t * t;
        sumTv += t * volumeL;
    }

    /** The fill phase ended; {@code hold} keeps what was learned. */
    void ended(double noiseL, boolean hold) {
        double spread = n > 5 ? sumTt - sumT * sumT / n : 0;
        double se = spread > 0 ? noiseL / StrictMath.sqrt(spread) : Double.POSITIVE_INFINITY;
        if (hold) {
            lagging.clear();
        } else if (siphons && roughlyLearned() && se < 2.5) {
            lagging.addLast(new Phase(endMin, (sumTv - sumT * sumV / n) / spread, se, fillLMin));
            while (!lagging.isEmpty() && (phases < PROMPT_PHASES || lagging.getFirst().endMin < endMin - LAG_MIN)) {
                Phase old = lagging.removeFirst();
                if (phases > PROMPT_PHASES) {
                    foresight.missed(
                            old.endMin,
                            bounded(old.slope - old.foretold, old.se),
                            StrictMath.hypot(old.se, spreadLMin));
                }
                phase(old.endMin, old.slope, old.se);
            }
        }
        n = 0;
        sumT = 0;
        sumV = 0;
        sumTt = 0;
        sumTv = 0;
    }

    /** Of the first phases some may hide a drain: these are the less steep ones. */
    private double lowerThird() {
        double[] sorted = java.util.Arrays.copyOf(first, phases);
        java.util.Arrays.sort(sorted);
        return sorted[phases / 3];
    }

    private double bounded(double missLMin, double se) {
        double most = 3 * (se + spreadLMin);
        return StrictMath.max(-most, StrictMath.min(most, missLMin));
    }

    /** A mean that forgets over hours. */
    private void phase(double atMin, double slope, double se) {
        double weight = 1 / (se * se + spreadLMin * spreadLMin);
        if (phases < PROMPT_PHASES) {
            first[phases] = slope;
        }
        phases++;
        if (phases <= PROMPT_PHASES) {
            fillLMin = lowerThird();
            sumW = 2 * weight;
            sumWs = sumW * fillLMin;
            phaseMin = atMin;
            return;
        }
        double miss = bounded(slope - fillLMin, se);
        double fade = StrictMath.exp(-(atMin - phaseMin) / MEMORY_MIN);
        phaseMin = atMin;
        sumWs = sumWs * fade + weight * (fillLMin + miss);
        sumW = sumW * fade + weight;
        fillLMin = sumWs / sumW;
        double beyond = StrictMath.max(0, miss * miss - se * se);
        double var = spreadLMin * spreadLMin + 0.03 * (beyond - spreadLMin * spreadLMin);
        spreadLMin = StrictMath.max(LEAST_SPREAD, StrictMath.min(1.5, StrictMath.sqrt(StrictMath.max(0, var))));
    }
}
