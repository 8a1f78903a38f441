package bywash.rules.chlorine;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * What is believed of the residual, as the weights of all combinations of what is not known, and how each piece of evidence changes
 * them by Bayes' rule. The balance gives the prior, a {@link Belief}: for each of its cases and rates of loss a normal distribution
 * in the logarithm, each side with its own spread; beside it stands water that came in {@link Unseen}. How the probe answers is open
 * in each. What was told before is in {@link Joint}. Pieces of evidence are taken as independent given all these. For chances and
 * quantiles the weights are put on a {@link ResidualGrid}.
 *
 * <p>Source of the method: R. E. Kass and A. E. Raftery, 1995, Bayes factors, J. Am. Stat. Assoc. 90:773-795.
 */
final class Posterior {
    private static final double CLEAN_UG_L = 0.05;
    private static final double[] ACUTE = ResidualGrid.sharesAbove(ResidualEstimate.ACUTE_UG_L);
    private static final ProbeAnswer[] ANSWERS = ProbeAnswer.values();
    private static final ProbeAnswer[] NO_PROBE = {ProbeAnswer.FOULED};
    private static final Water[] WATERS = Water.values();
    private static final double UNSEEN_CELLS = unseenCells();

    private final double[] limitShares;
    private final ProbeAnswer[] answers;
    private final ResidualGrid cells = new ResidualGrid();
    private boolean gridded;

    // a residual and a kind of water each: its middle, ug/L, and where it begins and ends on the grid
    private double[] middle = new double[128];
    private double[] begin = new double[128];
    private double[] end = new double[128];
    private byte[] water = new byte[128];
    /** One for each answer of the probe. */
    private double[] weight = new double[128 * ANSWERS.length];

    private int places;

    /** @param unseen probability that water came in unseen, 0 to 1 */
    Posterior(Belief balance, double unseen, double limitUgL) {
        this(balance, new Joint(), new Unseen(unseen, Double.POSITIVE_INFINITY), limitUgL);
    }

    /** @param told what a probe has told; null where there is none to tell */
    Posterior(Belief balance, @Nullable Joint told, Unseen unseen, double limitUgL) {
        this.answers = told == null ? NO_PROBE : ANSWERS;
        this.limitShares = limitUgL == ResidualEstimate.ACUTE_UG_L ? ACUTE : ResidualGrid.sharesAbove(limitUgL);
        for (int i = 0; i < balance.cases().size(); i++) {
            known(balance.cases().get(i), i, told);
        }
        double seen = sum();
        int first = places * answers.length;
        for (int i = 0; i < first; i++) {
            weight[i] /= seen;
        }
        double missed = 0;
        for (int i = 1; i <= ResidualGrid.CELLS; i++) {
            if (unseen.chance() > 0 && unseenRange(i)) {
                double share = unseen.chance() / UNSEEN_CELLS * unseen.missed(ResidualGrid.middleUgL(i));
                missed += share;
                add(ResidualGrid.middleUgL(i), i - 1, i, Water.UNSEEN);
                share(share);
            }
        }
        for (int i = 0; i < first; i++) {
            weight[i] *= 1 - missed;
        }
    }

    private static boolean unseenRange(int cell) {
        double ugL = ResidualGrid.middleUgL(cell);
        return ugL >= 1 && ugL <= 500;
    }

    private double sum() {
        double sum = 0;
        for (int i = 0; i < places * answers.length; i++) {
            sum += weight[i];
        }
        return sum;
    }

    private void known(Case c, int situation, @Nullable Joint told) {
        Water kind = Belief.isMains(situation) ? Water.MAINS : Water.OTHER;
        if (c.most() * 1000 * StrictMath.exp(Case.Z95 * c.up()) < CLEAN_UG_L) {
            add(0, -1, -1, kind);
            share(c.share());
            return;
        }
        for (int r = 0; r < Case.RATES; r++) {
            double low = Joint.fromUgL(c, r, 0);
            double from = ResidualGrid.place(low);
            for (int a = 0; a < Joint.AMOUNTS; a++) {
                double high = Joint.fromUgL(c, r, a + 1);
                double to = ResidualGrid.place(high);
                add(StrictMath.sqrt(low * high), from, to, kind);
                share(c.share() * c.weight(r) * Joint.share(a));
                if (told != null) {
                    told(told, situation, r, a);
                }
                low = high;
                from = to;
            }
        }
    }

    private void add(double middleUgL, double from, double to, Water kind) {
        if (places == middle.length) {
            int more = 4 * places;
            middle = Arrays.copyOf(middle, more);
            begin = Arrays.copyOf(begin, more);
            end = Arrays.copyOf(end, more);
            water = Arrays.copyOf(water, more);
            weight = Arrays.copyOf(weight, more * ANSWERS.length);
        }
        middle[places] = middleUgL;
        begin[places] = from;
        end[places] = to;
        water[places] = (byte) kind.ordinal();
        places++;
    }

    /** Gives the last place its share, by how likely each answer is. */
    private void share(double share) {
        int at = (places - 1) * answers.length;
        for (ProbeAnswer each : answers) {
            weight[at++] = answers.length == 1 ? share : share * each.share();
        }
    }

    /** What a probe has told weighs on the last place. */
    private void told(Joint told, int situation, int rate, int amount) {
        int at = (places - 1) * answers.length;
        for (ProbeAnswer each : answers) {
            weight[at++] *= told.told(situation, rate, amount, each);
        }
    }

    private static double unseenCells() {
        double cells = 0;
        for (int i = 1; i <= ResidualGrid.CELLS; i++) {
            cells += unseenRange(i) ? 1 : 0;
        }
        return cells;
    }

    /** Puts the weights on the grid. */
    private ResidualGrid grid() {
        if (!gridded) {
            gridded = true;
            cells.clear();
            for (int i = 0; i < places; i++) {
                double all = 0;
                for (int k = i * answers.length; k < (i + 1) * answers.length; k++) {
                    all += weight[k];
                }
                if (all > 0) {
                    cells.add(begin[i], end[i], all);
                }
            }
        }
        return cells;
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
        return takeOfWater((ugL, kind) -> likelihood.applyAsDouble(ugL));
    }

    /** Takes a piece of evidence that is the same for every probe. Returns its Bayes factor for passed. */
    double takeOfWater(OfWater likelihood) {
        return take((place, first) -> {
            double times = likelihood.of(middle[place], WATERS[water[place]]);
            for (int k = first; k < first + answers.length; k++) {
                weight[k] *= times;
            }
        });
    }

    /** Takes a piece of evidence. Returns its Bayes factor for passed. */
    double take(Likelihood likelihood) {
        return take((place, first) -> {
            Water kind = WATERS[water[place]];
            for (int k = 0; k < answers.length; k++) {
                weight[first + k] *= likelihood.of(middle[place], answers[k], kind);
            }
        });
    }

    /** How probable a reading is if so much chlorine is there and such water came in. */
    interface OfWater {
        double of(double ugL, Water water);
    }

    /** Weighs one place, whose weights begin at {@code first}. */
    private interface Weighing {
        void of(int place, int first);
    }

    private double take(Weighing weighing) {
        double before = odds();
        for (int i = 0; i < places; i++) {
            if (anyWeight(i)) {
                weighing.of(i, i * answers.length);
            }
        }
        double sum = sum();
        for (int i = 0; i < places * answers.length; i++) {
            weight[i] = sum > 0 ? weight[i] / sum : 0;
        }
        gridded = false;
        double after = odds();
        return before > 0 && after > 0 ? after / before : 1;
    }

    private boolean anyWeight(int place) {
        for (int k = place * answers.length; k < (place + 1) * answers.length; k++) {
            if (weight[k] != 0) {
                return true;
            }
        }
        return false;
    }

    private double odds() {
        double p = passed();
        return p / StrictMath.max(1e-12, 1 - p);
    }

    /** Probability that the residual is above the limit. */
    double passed() {
        return grid().above(limitShares);
    }

    /** Probability that the residual is above a value, ug/L. */
    double above(double ugL) {
        return grid().above(ResidualGrid.sharesAbove(ugL));
    }

    /** The value below which this share of the weight lies, ug/L. */
    double quantile(double share) {
        return grid().quantile(share);
    }
}
