package bywash.rules.detect;

/**
 * One length of {@link SlowDrift}: the smoothed volume now less that of three lengths before, and what of it is usual.
 * The younger minutes of the window now count for more, since a ramp shows there first.
 */
final class SlowWindow {
    private static final double SIGMAS = 5.2;
    private static final double LEAST_L = 6;
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
    private double previousL = Double.NaN;
    private int seen;

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
        previousL = Double.NaN;
    }

    /** A minute has passed; {@code ring} holds the means of the last minutes. */
    void look(double[] ring, int count, boolean hold) {
        if (count < (1 + BEFORE) * length) {
            return;
        }
        previousL = differenceL;
        differenceL = difference(ring, count);
        if (hold) {
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
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * ring[(count - weights.length + i) % ring.length];
        }
        return sum;
    }

    /** How many limits the difference is. */
    double score() {
        double d = StrictMath.abs(excess());
        return Double.isNaN(d) || seen < 2 * length ? 0 : d / limit();
    }

    private double excess() {
        return differenceL - StrictMath.max(-0.06 * length, StrictMath.min(0.02 * length, driftL));
    }

    private double limit() {
        double lengths = seen / (double) length;
        double caution = 1 + StrictMath.max(0, TRUSTED_LENGTHS - lengths) * 0.1;
        return caution * StrictMath.max(LEAST_L + 0.03 * length, SIGMAS * StrictMath.sqrt(varianceL2));
    }

    /**
     * 1 for a slow gain, -1 for a slow loss, 0 for neither. A little evaporation is learned as drift. What the book of
     * the beds says for either, as a log likelihood ratio, counts along.
     */
    int sign(double in, double out) {
        int sign = excess() > 0 ? 1 : -1;
        double score = score();
        double own = SIGMAS * SIGMAS / 2;
        return own * score * score + (sign > 0 ? in : out) > own ? sign : 0;
    }

    /** Which way the volume moves. */
    int sign() {
        return excess() > 0 ? 1 : -1;
    }

    /** Rate that the growth of the difference shows, L/min; a ramp makes it grow by its rate. */
    double rateLMin() {
        double mean = differenceL / length;
        double growth = differenceL - previousL;
        return Double.isNaN(growth) || growth * mean < 0 || StrictMath.abs(growth) > 3 * StrictMath.abs(mean)
                ? 1.5 * mean
                : StrictMath.max(StrictMath.abs(growth), StrictMath.abs(mean)) * StrictMath.signum(mean);
    }

    /** Minutes back to the onset that rate and difference make. */
    double ageMin() {
        return length / 2.0 + differenceL / rateLMin();
    }
}
