package bywash.rules.chlorine;

import java.util.Arrays;

/**
 * What the potential has told so far of all that stays as it is through an incident: the rate of loss, how much came in, of what kind,
 * and how the probe answers, each combination by itself. A probe that rose far while the balance knew of much chlorine, and is back
 * where it was, tells of a fast loss, not of a weak answer; a reading alone cannot tell these apart.
 *
 * <p>Readings soon after each other share their error (the usual value drifts), so that an hour of them counts as one; what was
 * learned is doubted a little each hour, since an answer may change.
 */
final class Joint {
    /** Places of the amount in its spread. */
    static final int AMOUNTS = 8;

    private static final int ANSWERS = ProbeAnswer.values().length;
    private static final double ONE_READING_H = 1;
    private static final double DOUBT = 0.02;
    private static final double WIDE = 3;
    private static final double STEP = 2 * WIDE / AMOUNTS;
    private static final double LEAST_SPREAD = 0.05;
    private static final double[] SHARES = shares();

    private final double[] told = new double[Belief.MOST * Case.RATES * AMOUNTS * ANSWERS];

    Joint() {
        forget();
    }

    /** Nothing was told. */
    void forget() {
        Arrays.fill(told, 1);
    }

    private static double[] shares() {
        double[] shares = new double[AMOUNTS];
        double before = 0;
        for (int i = 0; i < AMOUNTS; i++) {
            double upTo = i == AMOUNTS - 1 ? 1 : Posterior.normalBelow(edge(i + 1));
            shares[i] = upTo - before;
            before = upTo;
        }
        return shares;
    }

    /** In standard deviations. */
    private static double edge(int i) {
        return STEP * i - WIDE;
    }

    /** Share of the amounts at a place. */
    static double share(int amount) {
        return SHARES[amount];
    }

    /** Lower end of a place of the amount, ug/L; the upper end is the lower of the next. */
    static double fromUgL(Case c, int rate, int amount) {
        double z = edge(amount);
        double sd = StrictMath.max(LEAST_SPREAD, z < 0 ? c.down() : c.up());
        return c.mgL(rate) * 1000 * StrictMath.exp(z * sd);
    }

    /** How much more probable a combination has become than it was. */
    double told(int situation, int rate, int amount, ProbeAnswer answer) {
        return told[place(situation, rate, amount, answer)];
    }

    private static int place(int situation, int rate, int amount, ProbeAnswer answer) {
        return ((situation * Case.RATES + rate) * AMOUNTS + amount) * ANSWERS + answer.ordinal();
    }

    /**
     * A reading that held for a time.
     *
     * @param likelihood of the reading
     * @param hours for how long, h
     */
    void learn(Belief belief, Likelihood likelihood, double hours) {
        double power = StrictMath.min(1, hours / ONE_READING_H);
        double most = 0;
        for (int s = 0; s < Belief.MOST; s++) {
            // where nothing was dosed, what a dose did or did not is one
            Case c = belief.cases().get(s % belief.cases().size());
            Water water = Belief.isMains(s) ? Water.MAINS : Water.OTHER;
            for (int r = 0; r < Case.RATES; r++) {
                double from = fromUgL(c, r, 0);
                for (int a = 0; a < AMOUNTS; a++) {
                    double to = fromUgL(c, r, a + 1);
                    double middle = StrictMath.sqrt(from * to);
                    from = to;
                    for (ProbeAnswer answer : ProbeAnswer.values()) {
                        int i = place(s, r, a, answer);
                        told[i] *= StrictMath.pow(likelihood.of(middle, answer, water), power);
                        most = StrictMath.max(most, told[i]);
                    }
                }
            }
        }
        for (int i = 0; i < told.length; i++) {
            told[i] = most > 0 ? (1 - DOUBT * power) * told[i] / most + DOUBT * power : 1;
        }
    }
}
