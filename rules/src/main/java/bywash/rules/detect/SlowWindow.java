package bywash.rules.detect;

import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * One length of {@link SlowDrift}: the smoothed volume now less that of three lengths before, and what of it is usual.
 * The younger minutes of the window now count for more, since a ramp shows there first.
 */
final class SlowWindow {
    private static final double SIGMAS = 5.5;
    /** Growth tells an age to such a factor, and to as much as onsets lie apart. */
    private static final double AGE_FACTOR = 1.5;

    private static final double AGE_STEP_MIN = 2;
    /** Below that share of its limit nothing else makes up for what is missing. */
    private static final double HINTS = 0.6;

    private static final double LEAST_L = 6;
    private static final int GROWTH_OVER = 4;
    private static final double MOST_OF_MEAN = 12;
    private static final double YOUNG = 2;
    /** Lengths that the reference spans. */
    static final int BEFORE = 3;

    private static final double START_SPREAD_L = 3;
    /** Differences overlap; after this many lengths the spread is trusted. */
    private static final double TRUSTED_LENGTHS = 6;

    private final int length;
    private final double[] weights;
    private final double[] before;
    private final double gain;
    private double varianceL2 = START_SPREAD_L * START_SPREAD_L;
    private double driftL;
    private double differenceL = Double.NaN;
    /** What unseen minutes may make of the difference, one standard deviation. */
    private double unseenSdL;

    private final double[] earlierL = new double[GROWTH_OVER];
    private int looks;
    private int seen;
    /** Both as of the last look: they are asked for at each tick. */
    private double excessL = Double.NaN;

    private double score;

    SlowWindow(int length) {
        this.length = length;
        this.gain = 1.0 / (24 * length);
        this.weights = hann(length, YOUNG);
        this.before = hann(BEFORE * length, 0);
    }

    private static double[] hann(int n, double young) {
        double[] weights = new double[n];
        double total = 0;
        for (int i = 0; i < n; i++) {
            double x = (i + 0.5) / n;
            weights[i] = (1 - StrictMath.cos(2 * StrictMath.PI * x)) * (1 + young * x);
            total += weights[i];
        }
        for (int i = 0; i < n; i++) {
            weights[i] /= total;
        }
        return weights;
    }

    void clear() {
        differenceL = Double.NaN;
        java.util.Arrays.fill(earlierL, Double.NaN);
        judge();
    }

    /** Minutes that it weighs. */
    int spanMin() {
        return (1 + BEFORE) * length;
    }

    /**
     * A minute has passed.
     *
     * @param ring the means of the last minutes
     * @param unseen those of them that nobody saw; null where all within the span were seen
     */
    void look(double[] ring, boolean @Nullable [] unseen, int count, boolean hold) {
        if (count >= spanMin()) {
            take(ring, unseen, count, hold);
            judge();
        }
    }

    private void take(double[] ring, boolean @Nullable [] unseen, int count, boolean hold) {
        earlierL[looks % GROWTH_OVER] = differenceL;
        looks++;
        differenceL = difference(ring, count);
        double share = unseen == null ? 0 : share(unseen, count, weights) + share(unseen, count - length, before);
        unseenSdL = share > 0 ? share * swingL(ring, count) : 0;
        if (hold || share > 0) {
            return;
        }
        seen++;
        double g = StrictMath.max(gain, 1.0 / (seen + length));
        double most = 4 * StrictMath.sqrt(varianceL2);
        double miss = StrictMath.max(-most, StrictMath.min(most, differenceL - driftL));
        driftL += g * miss;
        varianceL2 += g * (miss * miss - varianceL2);
    }

    private double difference(double[] ring, int count) {
        return mean(ring, count, weights) - mean(ring, count - length, before);
    }

    private static double mean(double[] ring, int count, double[] weights) {
        double sum = 0;
        int at = (count - weights.length) % ring.length;
        for (double weight : weights) {
            sum += weight * ring[at];
            at = at + 1 == ring.length ? 0 : at + 1;
        }
        return sum;
    }

    /** Weight of the minutes that nobody saw: in one hole the siphons' swing misleads them all the same way. */
    private static double share(boolean[] unseen, int count, double[] weights) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            sum += unseen[(count - weights.length + i) % unseen.length] ? weights[i] : 0;
        }
        return sum;
    }

    /** Standard deviation of the minutes' means, L. */
    private double swingL(double[] ring, int count) {
        int n = spanMin();
        double sum = 0;
        double squares = 0;
        for (int i = 1; i <= n; i++) {
            double v = ring[(count - i) % ring.length] - ring[(count - 1) % ring.length];
            sum += v;
            squares += v * v;
        }
        return StrictMath.sqrt(StrictMath.max(0, squares / n - sum / n * sum / n));
    }

    private void judge() {
        excessL = differenceL - StrictMath.max(-0.06 * length, StrictMath.min(0.02 * length, driftL));
        score = Double.isNaN(excessL) || seen < 2 * length ? 0 : StrictMath.abs(excessL) / limit();
    }

    /** How many limits the difference is. */
    double score() {
        return score;
    }

    /** The least flow that passes the limit so long after it began, L/min; NaN until enough was seen. */
    double findsLMin(double sinceMin) {
        if (seen < 2 * length) {
            return Double.NaN;
        }
        double response = response(weights, sinceMin);
        double needed = limit() + Reach.LIKELY_SIGMAS * StrictMath.sqrt(varianceL2);
        return response > 0 ? needed / response : Double.NaN;
    }

    /** The rate of a flow of such an age that makes the difference, L/min, signed; NaN where its growth shows another age. */
    double rateSinceLMin(double ageMin) {
        double shown = differenceL * growthL() > 0 ? ageMin() : length;
        double oldest = shown < length ? AGE_FACTOR * shown + AGE_STEP_MIN : spanMin();
        return ageMin < shown / AGE_FACTOR || ageMin > oldest
                ? Double.NaN
                : excessL / (response(weights, ageMin) - response(before, ageMin - length));
    }

    /** What a flow of 1 L/min of such an age adds to a mean that ends now, L. */
    private static double response(double[] weights, double ageMin) {
        double response = 0;
        for (int i = 0; i < weights.length; i++) {
            response += weights[i] * StrictMath.max(0, ageMin - (weights.length - i - 0.5));
        }
        return response;
    }

    /** What the difference usually is, L; one standard deviation. */
    double sdL() {
        return StrictMath.sqrt(varianceL2);
    }

    private double limit() {
        double lengths = seen / (double) length;
        double caution = 1 + StrictMath.max(0, TRUSTED_LENGTHS - lengths) * 0.1;
        double sd = StrictMath.sqrt(varianceL2 + unseenSdL * unseenSdL);
        return caution * StrictMath.max(LEAST_L + 0.03 * length, SIGMAS * sd);
    }

    /** Whether it shows a slow gain or loss, with what else is known counted along. A little evaporation is learned as drift. */
    boolean shows(ToDoubleFunction<SlowWindow> beside) {
        double own = SIGMAS * SIGMAS / 2;
        return score > HINTS && own * score * score + beside.applyAsDouble(this) > own;
    }

    /** Which way the volume moves. */
    int sign() {
        return excessL > 0 ? 1 : -1;
    }

    /** Rate that difference and growth show together, L/min: they tell how long ago a ramp began, and so its rate. */
    double rateLMin() {
        double mean = differenceL / length;
        double growth = growthL();
        if (!(growth * mean > 0)) {
            return 1.5 * mean;
        }
        double rate = StrictMath.abs(growth) / share((int) ageMin());
        double most = MOST_OF_MEAN * StrictMath.abs(mean);
        return StrictMath.signum(mean) * StrictMath.max(StrictMath.abs(mean), StrictMath.min(most, rate));
    }

    private double growthL() {
        return (differenceL - earlierL[looks % GROWTH_OVER]) / GROWTH_OVER;
    }

    /** Share of the window's weight in its last minutes: by so much a ramp of that age grows the difference. */
    private double share(int age) {
        double sum = 0;
        for (int i = StrictMath.max(0, length - age); i < length; i++) {
            sum += weights[i];
        }
        return sum;
    }

    /** Minutes back to the onset that difference and growth make. */
    double ageMin() {
        double ratio = differenceL / growthL();
        double share = 0;
        double grown = 0;
        for (int age = 1; age <= length; age++) {
            share += weights[length - age];
            grown += share;
            if (!(grown / share < ratio)) {
                return age;
            }
        }
        return length;
    }
}
