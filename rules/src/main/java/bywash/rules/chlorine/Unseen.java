package bywash.rules.chlorine;

/**
 * How probable it is that mains water came in that the balance does not see: so much in all, evenly in the logarithm from 1 to 500
 * ug/L, and less where the balance has had time to see as much water as that takes.
 *
 * @param chance at any time, 0 to 1; assumed
 * @param halfSeenUgL residual of so much water that the balance sees half of such inflows by now; infinite where it had no time
 */
record Unseen(double chance, double halfSeenUgL) {
    private static final double LEAST_MISSED = 0.01;

    /** Nothing comes in unseen. */
    static final Unseen NONE = new Unseen(0, Double.POSITIVE_INFINITY);

    /** Share of inflows that bring such a residual and are missed, 0.01 to 1. */
    double missed(double ugL) {
        double folds = StrictMath.pow(ugL / halfSeenUgL, 4);
        return StrictMath.max(LEAST_MISSED, 1 / (1 + folds));
    }
}
