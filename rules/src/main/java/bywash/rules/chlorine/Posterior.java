package bywash.rules.chlorine;

import java.util.function.DoubleUnaryOperator;

/**
 * What is believed of the residual, as weights on a grid of values, and how each piece of evidence changes that by Bayes'
 * rule. The balance gives the prior: a normal distribution in the logarithm with its likely value as median and its
 * ends as 5 and 95 % points, each side with its own spread; a small share stands for water that came in unseen, spread
 * evenly in the logarithm from 1 to 500 ug/L; what is below the grid stands at zero. Pieces of evidence are taken
 * as independent given the residual. The weight of a cell lies evenly over it in the logarithm, for chances and for
 * quantiles alike, so that what is said of the range and of the chance is said of one distribution.
 *
 * <p>Source of the method: R. E. Kass and A. E. Raftery, 1995, Bayes factors, J. Am. Stat. Assoc. 90:773-795.
 */
final class Posterior {
    private static final int CELLS = 72;
    private static final double FIRST_UG_L = 0.05;
    private static final double LAST_UG_L = 10_000;
    private static final double Z95 = 1.645;
    private static final double LEAST_SPREAD = 0.05;
    private static final double CLEAN_UG_L = 0.05;
    private static final double STEP = StrictMath.log(LAST_UG_L / FIRST_UG_L) / (CELLS - 1);
    private static final double[] VALUES = values();
    private static final double[] ACUTE = sharesAbove(ResidualEstimate.ACUTE_UG_L);

    private final double[] limitShares;
    private final double[] weight = new double[CELLS + 1];

    /** @param unseen probability that water came in unseen, 0 to 1 */
    Posterior(Residual balance, double unseen, double limitUgL) {
        this.limitShares = limitUgL == ResidualEstimate.ACUTE_UG_L ? ACUTE : sharesAbove(limitUgL);
        double likely = balance.likelyMgL() * 1000;
        double high = balance.highMgL() * 1000;
        if (high < CLEAN_UG_L) {
            weight[0] = 1 - unseen;
        } else {
            known(balance.lowMgL() * 1000, StrictMath.max(CLEAN_UG_L, likely), high, 1 - unseen);
        }
        double sum = 0;
        for (int i = 1; i <= CELLS; i++) {
            sum += VALUES[i] >= 1 && VALUES[i] <= 500 ? 1 : 0;
        }
        for (int i = 1; i <= CELLS; i++) {
            weight[i] += VALUES[i] >= 1 && VALUES[i] <= 500 ? unseen / sum : 0;
        }
    }

    private static double[] values() {
        double[] values = new double[CELLS + 1];
        for (int i = 1; i <= CELLS; i++) {
            values[i] = FIRST_UG_L * StrictMath.exp(STEP * (i - 1));
        }
        return values;
    }

    private void known(double low, double likely, double high, double share) {
        double above = StrictMath.max(LEAST_SPREAD, StrictMath.log(StrictMath.max(high, likely) / likely) / Z95);
        double floor = StrictMath.max(low, likely / 1000);
        double below = StrictMath.max(LEAST_SPREAD, StrictMath.log(likely / floor) / Z95);
        double before = 0;
        for (int i = 0; i <= CELLS; i++) {
            double log = StrictMath.log(VALUES[StrictMath.max(1, i)] / likely) + (i == 0 ? -STEP : STEP) / 2;
            double upTo = i == CELLS ? 1 : normalBelow(log / (log > 0 ? above : below));
            weight[i] += share * (upTo - before);
            before = upTo;
        }
    }

    /**
     * Share of the standard normal distribution below a value, within 1e-7.
     *
     * <p>Source: M. Abramowitz and I. A. Stegun, 1964, Handbook of Mathematical Functions, 26.2.17 (from memory; held against
     * Hipparchus in the tests).
     */
    static double normalBelow(double z) {
        double x = StrictMath.abs(z);
        double t = 1 / (1 + 0.2316419 * x);
        double sum = t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
        double above = StrictMath.exp(-0.5 * x * x) / StrictMath.sqrt(2 * StrictMath.PI) * sum;
        return z > 0 ? 1 - above : above;
    }

    /** Takes a piece of evidence: how probable it is at each residual (ug/L). Returns its Bayes factor for passed. */
    double take(DoubleUnaryOperator likelihood) {
        double before = odds();
        double sum = 0;
        for (int i = 0; i <= CELLS; i++) {
            weight[i] *= weight[i] == 0 ? 0 : likelihood.applyAsDouble(VALUES[i]);
            sum += weight[i];
        }
        for (int i = 0; i <= CELLS; i++) {
            weight[i] = sum > 0 ? weight[i] / sum : 0;
        }
        double after = odds();
        return before > 0 && after > 0 ? after / before : 1;
    }

    private double odds() {
        double p = passed();
        return p / StrictMath.max(1e-12, 1 - p);
    }

    /** Probability that the residual is above the limit. */
    double passed() {
        return above(limitShares);
    }

    /** Probability that the residual is above a value, ug/L. */
    double above(double ugL) {
        return above(sharesAbove(ugL));
    }

    private double above(double[] shares) {
        double sum = 0;
        double all = 0;
        for (int i = 0; i <= CELLS; i++) {
            sum += weight[i] * shares[i];
            all += weight[i];
        }
        return all > 0 ? sum / all : 0;
    }

    /** How much of each cell lies above a value, 0 to 1. */
    private static double[] sharesAbove(double ugL) {
        double[] shares = new double[CELLS + 1];
        for (int i = 1; i <= CELLS; i++) {
            double share = StrictMath.log(VALUES[i] / ugL) / STEP + 0.5;
            shares[i] = StrictMath.max(0, StrictMath.min(1, share));
        }
        return shares;
    }

    /** The value below which this share of the weight lies, ug/L. */
    double quantile(double share) {
        double all = 0;
        for (double w : weight) {
            all += w;
        }
        double left = share * all - weight[0];
        if (left <= 0) {
            return 0;
        }
        for (int i = 1; i <= CELLS; i++) {
            if (weight[i] > 0 && left <= weight[i]) {
                return VALUES[i] * StrictMath.exp(STEP * (left / weight[i] - 0.5));
            }
            left -= weight[i];
        }
        return VALUES[CELLS];
    }
}
