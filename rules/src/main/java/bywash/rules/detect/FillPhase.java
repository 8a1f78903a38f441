package bywash.rules.detect;

/**
 * Tells fill from drain in a sump whose beds run on siphons, and learns the fill slope.
 *
 * <p>While all beds fill, the sump falls at the pump's flow; a drain is a rise far above that. The usual fill slope is
 * the lower quartile of half-minute slopes, then refined by whole fill phases and held while water moves unplanned.
 */
final class FillPhase {
    private static final double DRAIN_SIGMAS = 3.5;
    private static final double DRAIN_LEAST_L_MIN = 13;
    private static final int PHASES_LEARNED = 8;
    private static final int HISTORY = 256;

    private final boolean siphons;
    private final double[] slopes = new double[HISTORY];
    private int slopeCount;
    private double roughLMin = Double.NaN;
    private double fillLMin;
    private double spreadLMin = 0.3;
    private int phases;
    private double n;
    private double sumT;
    private double sumV;
    private double sumTt;
    private double sumTv;
    private double originMin;

    FillPhase(boolean siphons) {
        this.siphons = siphons;
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

    /** Whether a rise over {@code minutes} is a drain. */
    boolean draining(double riseL, double minutes, double noiseL) {
        if (!siphons || !roughlyLearned()) {
            return false;
        }
        double above = riseL - fillLMin() * minutes;
        return above > StrictMath.max(DRAIN_SIGMAS * noiseL * 1.2, DRAIN_LEAST_L_MIN * minutes);
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

    /** One volume inside a fill phase. */
    void inside(double tMin, double volumeL) {
        if (n == 0) {
            originMin = tMin;
        }
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
        if (siphons && !hold && roughlyLearned() && se < 2.5) {
            phase((sumTv - sumT * sumV / n) / spread, se);
        }
        n = 0;
        sumT = 0;
        sumV = 0;
        sumTt = 0;
        sumTv = 0;
    }

    private void phase(double slope, double se) {
        if (phases < PHASES_LEARNED) {
            fillLMin = roughLMin;
        }
        phases++;
        double weight = 1 / (se * se + spreadLMin * spreadLMin);
        double full = 1 / (0.25 + spreadLMin * spreadLMin);
        double gain = StrictMath.max(0.02, 1.0 / StrictMath.max(1, phases - PHASES_LEARNED + 3))
                * StrictMath.min(1, weight / full);
        double miss = StrictMath.max(-3 * (se + spreadLMin), StrictMath.min(3 * (se + spreadLMin), slope - fillLMin));
        fillLMin += phases <= PHASES_LEARNED ? 0 : gain * miss;
        if (phases > PHASES_LEARNED) {
            double beyond = StrictMath.max(0, miss * miss - se * se);
            double var = spreadLMin * spreadLMin + 0.03 * (beyond - spreadLMin * spreadLMin);
            spreadLMin = StrictMath.max(0.15, StrictMath.min(1.5, StrictMath.sqrt(StrictMath.max(0, var))));
        }
    }
}
