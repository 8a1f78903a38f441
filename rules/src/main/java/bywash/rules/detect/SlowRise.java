package bywash.rules.detect;

import java.util.Arrays;

/**
 * Finds large flows, which look like drains, by how long a rise stays slower than drains do.
 *
 * <p>A siphon is a pipe of one bore: a bed drains fast and is soon empty, and two that drain together are faster still.
 * So for each of some rates the longest time is learned for which a rise stayed under it; a rise that stays under it
 * for much longer is water from elsewhere. Rates are above the fill slope, over the last minute.
 */
final class SlowRise {
    private static final double[] UNDER_L_MIN = {12, 15, 18, 21, 25, 30, 36, 43, 52};
    private static final double LEAST_L_MIN = 5;
    private static final double LEAST_SIGMAS = 3;
    private static final double MOST_SD_L_MIN = 4;
    private static final double FACTOR = 1.3;
    private static final double MORE_MIN = 0.65;
    /** Times so much with none, one or two other views that say the same: a worn siphon may once drain as slowly. */
    private static final double[] BACKED_BY = {1.35, 1.15, 1};

    /** Where overlapping drains stay under a rate for longer, it tells nothing. */
    private static final double TELLS_MIN = 2.5;

    /** A pump that stops unseen looks like its own flow coming in, until the sump is seen to stand. */
    private static final double PUMP_UNTOLD_MIN = 6;

    private static final int DRAINS_LEARNED = 30;
    private static final double CAUTION_DRAINS = 12;
    /** What was long ago counts less: halved in three days. */
    private static final double FADE_PER_MIN = StrictMath.log(2) / (3 * 1440);

    private static final double LONGEST_STEP_MIN = 1;

    private final double moreMin;
    private final double[] sinceMin = new double[UNDER_L_MIN.length];
    private final double[] longestMin = new double[UNDER_L_MIN.length];
    private double lastMin = Double.NaN;
    private final double[] foundSinceMin = new double[BACKED_BY.length];

    SlowRise(boolean pumpTold) {
        this.moreMin = MORE_MIN + (pumpTold ? 0 : PUMP_UNTOLD_MIN);
        forget();
    }

    /**
     * The rate of the last minute after so many drains.
     *
     * @param still whether it rises still: a minute in which a drain ended shows its rise until it is past
     * @param sdLMin standard deviation of the rate
     * @param hold keeps what was learned
     */
    void rate(double tMin, double rateLMin, boolean still, double sdLMin, int drains, boolean hold) {
        double step = Double.isNaN(lastMin) ? 0 : StrictMath.min(LONGEST_STEP_MIN, tMin - lastMin);
        lastMin = tMin;
        double least = StrictMath.max(LEAST_L_MIN, LEAST_SIGMAS * sdLMin);
        boolean learned = drains >= DRAINS_LEARNED && sdLMin < MOST_SD_L_MIN;
        double caution = 1 + CAUTION_DRAINS / StrictMath.max(1, drains);
        forgetFound();
        for (int j = 0; j < UNDER_L_MIN.length; j++) {
            longestMin[j] *= 1 - FADE_PER_MIN * step;
            if (!(rateLMin > least && rateLMin < UNDER_L_MIN[j])) {
                end(j, tMin, hold);
                continue;
            }
            sinceMin[j] = Double.isNaN(sinceMin[j]) ? tMin : sinceMin[j];
            double usual = caution * (FACTOR * longestMin[j] + moreMin);
            double lasted = learned && still && longestMin[j] < TELLS_MIN ? tMin - sinceMin[j] : 0;
            for (int k = 0; k < BACKED_BY.length; k++) {
                foundSinceMin[k] = lasted > BACKED_BY[k] * usual ? sinceMin[j] : foundSinceMin[k];
            }
        }
    }

    private void end(int j, double tMin, boolean hold) {
        if (!Double.isNaN(sinceMin[j]) && !hold) {
            longestMin[j] = StrictMath.max(longestMin[j], tMin - sinceMin[j]);
        }
        sinceMin[j] = Double.NaN;
    }

    /** What rises now is not known. */
    void forget() {
        Arrays.fill(sinceMin, Double.NaN);
        forgetFound();
    }

    private void forgetFound() {
        Arrays.fill(foundSinceMin, Double.NaN);
    }

    /**
     * Since when a rise is slower than any drain is for so long; NaN while drains explain it.
     *
     * @param backing how many other views say that water comes in, 0 to 2
     */
    double foundSinceMin(int backing) {
        return foundSinceMin[backing];
    }
}
