package bywash.rules.chlorine;

import bywash.rules.water.LossRate;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * The residual of the mixed system if one thing that is not known is so, for each of some rates of loss. Rates are those of a
 * normal distribution in the logarithm whose 5 and 95 % points are the ends of the range, each side with its own spread. What
 * amounts leave open (the strength of a source, its litres, the volume they mix into) is a spread in the logarithm about
 * each value. So one slow rate is slow throughout, and the ends of what has nothing to do with each other do not add up.
 */
final class Case {
    /** Rates of loss that are followed. */
    static final int RATES = 9;

    /** The normal distribution's 95 % point. */
    static final double Z95 = 1.645;

    private static final double STEP = 0.5;
    private static final double MOST_MG_L = 20;
    private static final double WIDEST = 3;
    private static final double[] USUAL = usual();

    private final double share;
    private final double[] weight;
    private final double[] mgL;
    private final double down;
    private final double up;

    private Case(double share, double[] weight, double[] mgL, double down, double up) {
        this.share = share;
        this.weight = weight;
        this.mgL = mgL;
        this.down = StrictMath.min(WIDEST, down);
        this.up = StrictMath.min(WIDEST, up);
    }

    private static double z(int rate) {
        return STEP * (rate - RATES / 2);
    }

    private static double[] usual() {
        double[] w = new double[RATES];
        double sum = 0;
        for (int i = 0; i < RATES; i++) {
            w[i] = StrictMath.exp(-0.5 * z(i) * z(i));
            sum += w[i];
        }
        for (int i = 0; i < RATES; i++) {
            w[i] /= sum;
        }
        return w;
    }

    /** Clean water. */
    static Case clean(double share) {
        return new Case(share, USUAL, new double[RATES], 0, 0);
    }

    /** One residual whatever the rate, its ends the 5 and 95 % points. */
    static Case of(double share, Residual residual) {
        double[] same = new double[RATES];
        Arrays.fill(same, residual.likelyMgL());
        return new Case(
                share,
                USUAL,
                same,
                fold(residual.likelyMgL(), residual.lowMgL()) / Z95,
                fold(residual.highMgL(), residual.likelyMgL()) / Z95);
    }

    /**
     * A value for each rate.
     *
     * @param atRate mg/L at a rate of loss, 1/h
     * @param down one standard deviation below, in the logarithm
     * @param up the same above
     */
    static Case of(double share, LossRate loss, DoubleUnaryOperator atRate, double down, double up) {
        double[] values = new double[RATES];
        for (int i = 0; i < RATES; i++) {
            values[i] = atRate.applyAsDouble(rate(loss, i));
        }
        return new Case(share, USUAL, values, down, up);
    }

    /** How far one is above another in the logarithm; an end at nothing counts as a thousandth. */
    static double fold(double more, double less) {
        return more <= 0 ? 0 : StrictMath.max(0, StrictMath.log(more / StrictMath.max(less, more / 1000)));
    }

    /** The rate of loss at a place of its distribution, 1/h. */
    private static double rate(LossRate loss, int i) {
        double likely = loss.likelyPerHour();
        double z = z(i) / Z95;
        return z < 0
                ? likely * StrictMath.exp(z * fold(likely, loss.lowPerHour()))
                : likely * StrictMath.exp(z * fold(loss.highPerHour(), likely));
    }

    double share() {
        return share;
    }

    double weight(int rate) {
        return weight[rate];
    }

    double mgL(int rate) {
        return mgL[rate];
    }

    double down() {
        return down;
    }

    double up() {
        return up;
    }

    /** The highest of any rate, mg/L. */
    double most() {
        double most = 0;
        for (double value : mgL) {
            most = StrictMath.max(most, value);
        }
        return most;
    }

    private double middle() {
        return mgL[RATES / 2];
    }

    Case withShare(double newShare) {
        return new Case(newShare, weight, mgL, down, up);
    }

    Case after(LossRate loss, double hours) {
        if (hours <= 0) {
            return this;
        }
        double[] values = new double[RATES];
        for (int i = 0; i < RATES; i++) {
            values[i] = mgL[i] * StrictMath.exp(-rate(loss, i) * hours);
        }
        return new Case(share, weight, values, down, up);
    }

    /** With what came in beside it; both spreads hold together, each by its part. */
    Case plus(Case in) {
        double sum = middle() + in.middle();
        double of = sum > 0 ? in.middle() / sum : 0;
        double[] values = new double[RATES];
        for (int i = 0; i < RATES; i++) {
            values[i] = StrictMath.min(MOST_MG_L, mgL[i] + in.mgL[i]);
        }
        return new Case(share, weight, values, down + (in.down - down) * of, up + (in.up - up) * of);
    }

    Case diluted(double keep) {
        double[] values = new double[RATES];
        for (int i = 0; i < RATES; i++) {
            values[i] = mgL[i] * keep;
        }
        return new Case(share, weight, values, down, up);
    }

    /** Less what a dechlorinator takes, mg/L; what was open in mg/L stays open. */
    Case less(double takenMgL) {
        double[] values = new double[RATES];
        for (int i = 0; i < RATES; i++) {
            values[i] = StrictMath.max(0, mgL[i] - takenMgL);
        }
        double wider = values[RATES / 2] > 0 ? middle() / values[RATES / 2] : 1;
        return new Case(share, weight, values, down * wider, up * wider);
    }

    /**
     * After a test, by Bayes' rule for normal distributions at each rate; how well it fits moves the weight of the rate, and the
     * share of the case ({@link Belief} brings the shares to one).
     *
     * @param errorMgL one standard error of the test
     */
    Case tested(double totalMgL, double errorMgL) {
        double[] values = new double[RATES];
        double[] weights = new double[RATES];
        double fits = 0;
        double spread = 0;
        for (int i = 0; i < RATES; i++) {
            double before = mgL[i] * StrictMath.max(totalMgL < mgL[i] ? down : up, 0.01);
            double both = before * before + errorMgL * errorMgL;
            double gain = before * before / both;
            values[i] = mgL[i] + gain * (totalMgL - mgL[i]);
            double miss = (totalMgL - mgL[i]) / StrictMath.sqrt(both);
            weights[i] = weight[i] * StrictMath.exp(-0.5 * StrictMath.min(500, miss * miss)) / StrictMath.sqrt(both);
            fits += weights[i];
            double after = StrictMath.sqrt(gain) * errorMgL;
            spread += weights[i] * (values[i] > 0 ? after / values[i] : 0);
        }
        for (int i = 0; i < RATES; i++) {
            weights[i] /= fits;
        }
        double sd = spread / fits;
        return new Case(share * fits, weights, values, sd, sd);
    }
}
