package bywash.rules.chlorine;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * What is believed of the residual, as the weights of all combinations of what is not known, and how each piece of evidence changes
 * them by Bayes' rule. The balance gives the prior, a {@link Belief}: for each of its cases and rates of loss a normal distribution
 * in the logarithm, each side with its own spread; beside it stands water that came in {@link Unseen}. How the probe answers is open
 * in each. What was told before is in {@link Joint}. Pieces of evidence are taken as independent given all these. For chances and
 * quantiles the weights are put on a grid of residuals, where the weight of a cell lies evenly over it in the logarithm, so that
 * what is said of the range and of the chance is said of one distribution; what is below the grid stands at zero.
 *
 * <p>Source of the method: R. E. Kass and A. E. Raftery, 1995, Bayes factors, J. Am. Stat. Assoc. 90:773-795.
 */
final class Posterior {
    private static final int CELLS = 72;
    private static final double FIRST_UG_L = 0.05;
    private static final double LAST_UG_L = 10_000;
    private static final double CLEAN_UG_L = 0.05;
    private static final double STEP = StrictMath.log(LAST_UG_L / FIRST_UG_L) / (CELLS - 1);
    private static final double BELOW_GRID = StrictMath.log(FIRST_UG_L) - STEP / 2;
    private static final double[] VALUES = values();
    private static final double[] ACUTE = sharesAbove(ResidualEstimate.ACUTE_UG_L);
    private static final ProbeAnswer[] ANSWERS = ProbeAnswer.values();
    private static final ProbeAnswer[] NO_PROBE = {ProbeAnswer.FOULED};

    private final double[] limitShares;
    private final ProbeAnswer[] answers;
    private final double[] cells = new double[CELLS + 1];
    private boolean gridded;

    // one combination a place
    private double[] from = new double[256];
    private double[] to = new double[256];
    private double[] weight = new double[256];
    private byte[] answer = new byte[256];
    private byte[] water = new byte[256];
    private int count;

    /** @param unseen probability that water came in unseen, 0 to 1 */
    Posterior(Belief balance, double unseen, double limitUgL) {
        this(balance, new Joint(), new Unseen(unseen, Double.POSITIVE_INFINITY), limitUgL);
    }

    /** @param told what a probe has told; null where there is none to tell */
    Posterior(Belief balance, @Nullable Joint told, Unseen unseen, double limitUgL) {
        this.answers = told == null ? NO_PROBE : ANSWERS;
        this.limitShares = limitUgL == ResidualEstimate.ACUTE_UG_L ? ACUTE : sharesAbove(limitUgL);
        for (int i = 0; i < balance.cases().size(); i++) {
            known(balance.cases().get(i), i, told);
        }
        double seen = sum();
        for (int i = 0; i < count; i++) {
            weight[i] /= seen;
        }
        double inRange = 0;
        for (int i = 1; i <= CELLS; i++) {
            inRange += VALUES[i] >= 1 && VALUES[i] <= 500 ? 1 : 0;
        }
        double missed = 0;
        int first = count;
        for (int i = 1; i <= CELLS; i++) {
            if (unseen.chance() > 0 && VALUES[i] >= 1 && VALUES[i] <= 500) {
                double share = unseen.chance() / inRange * unseen.missed(VALUES[i]);
                missed += share;
                double half = StrictMath.exp(STEP / 2);
                add(VALUES[i] / half, VALUES[i] * half, share, Water.UNSEEN);
            }
        }
        for (int i = 0; i < first; i++) {
            weight[i] *= 1 - missed;
        }
    }

    private double sum() {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += weight[i];
        }
        return sum;
    }

    private void known(Case c, int situation, @Nullable Joint told) {
        Water kind = Belief.isMains(situation) ? Water.MAINS : Water.OTHER;
        if (c.most() * 1000 * StrictMath.exp(Case.Z95 * c.up()) < CLEAN_UG_L) {
            add(0, 0, c.share(), kind);
            return;
        }
        for (int r = 0; r < Case.RATES; r++) {
            double low = Joint.fromUgL(c, r, 0);
            for (int a = 0; a < Joint.AMOUNTS; a++) {
                double high = Joint.fromUgL(c, r, a + 1);
                double share = c.share() * c.weight(r) * Joint.share(a);
                if (told == null) {
                    add(low, high, share, kind);
                } else {
                    for (ProbeAnswer each : ANSWERS) {
                        add(low, high, share * each.share() * told.told(situation, r, a, each), each, kind);
                    }
                }
                low = high;
            }
        }
    }

    private void add(double low, double high, double share, Water kind) {
        for (ProbeAnswer each : answers) {
            add(low, high, answers.length == 1 ? share : share * each.share(), each, kind);
        }
    }

    private void add(double low, double high, double share, ProbeAnswer each, Water kind) {
        if (count == weight.length) {
            int more = 4 * count;
            from = Arrays.copyOf(from, more);
            to = Arrays.copyOf(to, more);
            weight = Arrays.copyOf(weight, more);
            answer = Arrays.copyOf(answer, more);
            water = Arrays.copyOf(water, more);
        }
        from[count] = low;
        to[count] = high;
        weight[count] = share;
        answer[count] = (byte) each.ordinal();
        water[count] = (byte) kind.ordinal();
        count++;
    }

    private static double[] values() {
        double[] values = new double[CELLS + 1];
        for (int i = 1; i <= CELLS; i++) {
            values[i] = FIRST_UG_L * StrictMath.exp(STEP * (i - 1));
        }
        return values;
    }

    /** Puts the weights on the grid. */
    private double[] grid() {
        if (!gridded) {
            gridded = true;
            Arrays.fill(cells, 0);
            for (int i = 0; i < count; i++) {
                if (weight[i] > 0) {
                    spread(from[i], to[i], weight[i]);
                }
            }
        }
        return cells;
    }

    private void spread(double low, double high, double share) {
        double begin = low <= 0 ? -1 : (StrictMath.log(low) - BELOW_GRID) / STEP;
        double end = high <= 0 ? -1 : (StrictMath.log(high) - BELOW_GRID) / STEP;
        double left = share;
        double each = end > begin ? share / (end - begin) : 0;
        for (int cell = (int) StrictMath.max(0, StrictMath.floor(begin)); cell < CELLS && cell < end; cell++) {
            double part = each * (StrictMath.min(end, cell + 1) - StrictMath.max(begin, cell));
            cells[cell + 1] += part;
            left -= part;
        }
        cells[begin >= CELLS ? CELLS : 0] += StrictMath.max(0, left);
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

    /** Takes a piece of evidence that is the same for every water and probe. Returns its Bayes factor for passed. */
    double take(DoubleUnaryOperator likelihood) {
        return take((ugL, probe, kind) -> likelihood.applyAsDouble(ugL));
    }

    /** Takes a piece of evidence. Returns its Bayes factor for passed. */
    double take(Likelihood likelihood) {
        double before = odds();
        Water[] kinds = Water.values();
        for (int i = 0; i < count; i++) {
            double ugL = StrictMath.sqrt(from[i] * to[i]);
            weight[i] *= weight[i] == 0 ? 0 : likelihood.of(ugL, ANSWERS[answer[i]], kinds[water[i]]);
        }
        double sum = sum();
        for (int i = 0; i < count; i++) {
            weight[i] = sum > 0 ? weight[i] / sum : 0;
        }
        gridded = false;
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
        double[] grid = grid();
        for (int i = 0; i <= CELLS; i++) {
            sum += grid[i] * shares[i];
            all += grid[i];
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
        double[] grid = grid();
        double all = 0;
        for (double w : grid) {
            all += w;
        }
        double left = share * all - grid[0];
        if (left <= 0) {
            return 0;
        }
        for (int i = 1; i <= CELLS; i++) {
            if (grid[i] > 0 && left <= grid[i]) {
                return VALUES[i] * StrictMath.exp(STEP * (left / grid[i] - 0.5));
            }
            left -= grid[i];
        }
        return VALUES[CELLS];
    }
}
