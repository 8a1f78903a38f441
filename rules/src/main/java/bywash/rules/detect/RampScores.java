package bywash.rules.detect;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Scores of ramps of unknown onset in the innovations of a linear filter: for each onset how far the filter's own state
 * has followed a unit ramp, and the sums A and B of {@link RampGlr}. Kept by element of the state, since each change of the
 * state moves all ramps alike.
 *
 * <p>Most copies are dropped before anybody asks them: a copy shares the sums of its original, which must not change any
 * more, and the moves of its state wait until it is asked.
 */
final class RampScores {
    private static final int MOST = 32;

    private final int size;
    private double[] onsetMin;
    private double[] a;
    private double[] b;
    /** How far each element of the state has followed each ramp. */
    private double[][] followed;

    private int count;
    private boolean shared;
    private List<Move> waiting = List.of();

    /** What an element of the state becomes: what it is, or nothing, and so many times another. */
    private record Move(int to, int from, double times, boolean adds) {}

    /** @param size of the filter's state */
    RampScores(int size) {
        this.size = size;
        this.onsetMin = new double[MOST];
        this.a = new double[MOST];
        this.b = new double[MOST];
        this.followed = new double[size][MOST];
    }

    private RampScores(RampScores o) {
        this.size = o.size;
        this.onsetMin = o.onsetMin;
        this.a = o.a;
        this.b = o.b;
        this.followed = o.followed;
        this.count = o.count;
        this.shared = true;
    }

    /** A copy; this one must not change from here on. */
    RampScores copy() {
        own();
        return new RampScores(this);
    }

    private void own() {
        if (!shared) {
            return;
        }
        shared = false;
        onsetMin = onsetMin.clone();
        a = a.clone();
        b = b.clone();
        double[][] original = followed;
        followed = new double[size][];
        for (int k = 0; k < size; k++) {
            followed[k] = original[k].clone();
        }
        for (Move move : waiting) {
            if (move.adds()) {
                adds(move.to(), move.from(), move.times());
            } else {
                becomes(move.to(), move.from(), move.times());
            }
        }
        waiting = List.of();
    }

    private void wait(Move move) {
        if (waiting.isEmpty()) {
            waiting = new ArrayList<>();
        }
        waiting.add(move);
    }

    void clear() {
        own();
        count = 0;
    }

    int count() {
        return count;
    }

    /** Element {@code to} of the state grows by so many times element {@code from}. */
    void adds(int to, int from, double times) {
        if (shared) {
            wait(new Move(to, from, times, true));
            return;
        }
        double[] t = followed[to];
        double[] f = followed[from];
        for (int i = 0; i < count; i++) {
            t[i] += f[i] * times;
        }
    }

    /** Element {@code to} of the state becomes so many times element {@code from}. */
    void becomes(int to, int from, double times) {
        if (shared) {
            wait(new Move(to, from, times, false));
            return;
        }
        double[] t = followed[to];
        double[] f = followed[from];
        for (int i = 0; i < count; i++) {
            t[i] = times * f[i];
        }
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
        own();
        if (count == MOST) {
            thin();
        }
        onsetMin[count] = tMin;
        a[count] = 0;
        b[count] = 0;
        for (double[] element : followed) {
            element[count] = 0;
        }
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
                for (double[] element : followed) {
                    element[kept] = element[i];
                }
                kept++;
            }
        }
        count = kept;
    }

    /**
     * Takes one innovation and its variance: what is seen is the last element of the state less the first {@code less},
     * and the state moves by {@code gain} of it.
     */
    void innovation(double tMin, int less, double innovation, double variance, double[] gain) {
        own();
        double[] signature = new double[count];
        double weight = 1 / variance;
        double[] seen = followed[size - 1];
        for (int i = 0; i < count; i++) {
            signature[i] = tMin - onsetMin[i] - seen[i];
        }
        for (int k = 0; k < less; k++) {
            double[] element = followed[k];
            for (int i = 0; i < count; i++) {
                signature[i] += element[i];
            }
        }
        for (int i = 0; i < count; i++) {
            double share = signature[i] * weight;
            a[i] += signature[i] * share;
            b[i] += innovation * share;
        }
        for (int k = 0; k < size; k++) {
            double[] element = followed[k];
            for (int i = 0; i < count; i++) {
                element[i] += gain[k] * signature[i];
            }
        }
    }

    /**
     * Log likelihood ratio, with a standing error as above, of the likeliest of some ramps against none: each has a rate of its
     * own, give or take a factor, by its onset. Below 0 where none is likelier; 0 without ramps.
     *
     * @param rateSince signed rate, L/min, of one that began then, min; NaN where there is none
     */
    double logRatio(DoubleUnaryOperator rateSince, double factor, double standingSdLMin) {
        double best = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            double about = rateSince.applyAsDouble(onsetMin[i]);
            if (!Double.isNaN(about)) {
                double some = about / factor;
                double other = about * factor;
                double seen = rateLMin(i);
                double rate =
                        StrictMath.max(StrictMath.min(some, other), StrictMath.min(StrictMath.max(some, other), seen));
                double share = a[i] / (1 + a[i] * standingSdLMin * standingSdLMin);
                best = StrictMath.max(best, (seen - rate / 2) * rate * share);
            }
        }
        return Double.isInfinite(best) ? 0 : best;
    }

    /** The likeliest ramp in the given direction; -1 where there is none. */
    int best(boolean in) {
        int best = -1;
        double most = 0;
        for (int i = 0; i < count; i++) {
            if (in == b[i] > 0 && a[i] > 0) {
                double ratio = logRatio(i);
                if (best < 0 || ratio > most) {
                    best = i;
                    most = ratio;
                }
            }
        }
        return best;
    }
}
