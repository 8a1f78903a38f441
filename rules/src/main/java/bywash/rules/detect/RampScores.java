package bywash.rules.detect;

/**
 * Scores of ramps of unknown onset in the innovations of a linear filter: for each onset how far the filter's own state
 * has followed a unit ramp, and the sums A and B of {@link RampGlr}.
 */
final class RampScores {
    private static final int MOST = 32;

    private final int size;
    private final double[] onsetMin = new double[MOST];
    private final double[] a = new double[MOST];
    private final double[] b = new double[MOST];
    private final double[][] followed = new double[MOST][];
    private int count;

    /** @param size of the filter's state */
    RampScores(int size) {
        this.size = size;
    }

    RampScores copy() {
        RampScores other = new RampScores(size);
        System.arraycopy(onsetMin, 0, other.onsetMin, 0, count);
        System.arraycopy(a, 0, other.a, 0, count);
        System.arraycopy(b, 0, other.b, 0, count);
        for (int i = 0; i < count; i++) {
            other.followed[i] = followed[i].clone();
        }
        other.count = count;
        return other;
    }

    void clear() {
        count = 0;
    }

    int count() {
        return count;
    }

    /** How far the state has followed ramp {@code i}; changed in place as the state moves. */
    double[] followed(int i) {
        return followed[i];
    }

    double onsetMin(int i) {
        return onsetMin[i];
    }

    double rateLMin(int i) {
        return a[i] > 0 ? b[i] / a[i] : 0;
    }

    double seLMin(int i) {
        return a[i] > 0 ? 1 / StrictMath.sqrt(a[i]) : Double.POSITIVE_INFINITY;
    }

    double logRatio(int i) {
        return logRatio(i, 0);
    }

    /** With a standing error of the rate, L/min, that no number of samples averages away. */
    double logRatio(int i, double standingSdLMin) {
        return logRatio(a[i], b[i], standingSdLMin);
    }

    /** Of the sums A and B of a ramp, with such a standing error of its rate. */
    static double logRatio(double a, double b, double standingSdLMin) {
        return a > 0 ? b * b / (2 * a * (1 + a * standingSdLMin * standingSdLMin)) : 0;
    }

    /** A new onset. */
    void begin(double tMin) {
        if (count == MOST) {
            thin();
        }
        onsetMin[count] = tMin;
        a[count] = 0;
        b[count] = 0;
        followed[count] = new double[size];
        count++;
    }

    /** Drops every other one of the older half. */
    private void thin() {
        int kept = 0;
        for (int i = 0; i < count; i++) {
            if (i >= MOST / 2 || i % 2 == 1) {
                onsetMin[kept] = onsetMin[i];
                a[kept] = a[i];
                b[kept] = b[i];
                followed[kept] = followed[i];
                kept++;
            }
        }
        count = kept;
    }

    /** Takes one innovation: the signature of ramp {@code i} in it, its variance. */
    void score(int i, double signature, double innovation, double variance) {
        a[i] += signature * signature / variance;
        b[i] += signature * innovation / variance;
    }

    /** The likeliest ramp in the given direction; -1 where there is none. */
    int best(boolean in) {
        int best = -1;
        for (int i = 0; i < count; i++) {
            if (in == b[i] > 0 && a[i] > 0 && (best < 0 || logRatio(i) > logRatio(best))) {
                best = i;
            }
        }
        return best;
    }
}
