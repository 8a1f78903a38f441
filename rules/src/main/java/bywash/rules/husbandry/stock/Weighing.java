package bywash.rules.husbandry.stock;

import java.time.Instant;
import java.util.List;

/**
 * One weighing of a cohort.
 *
 * @param counted how many were on the scales
 * @param cohortCount how many the cohort had
 * @param totalG of those counted, g
 * @param massesG one by one, g; empty where they were weighed together
 */
public record Weighing(Instant at, int counted, int cohortCount, double totalG, List<Double> massesG) {
    public Weighing {
        massesG = List.copyOf(massesG);
        if (counted < 1 || !(totalG > 0)) {
            throw new IllegalArgumentException(
                    "weighing of " + counted + " fish at " + totalG + " g; it must have a fish and a mass");
        }
    }

    /** Mean of those counted, g. */
    public double meanG() {
        return totalG / counted;
    }

    /**
     * Half width of the 95 % range of the cohort's mean, g: 2 s/sqrt(n) with the finite population correction; 0 where all
     * were weighed, NaN where the spread is not known.
     *
     * <p>Source: W. G. Cochran, 1977, Sampling Techniques, 3rd ed., ch. 2, eq. 2.20.
     */
    public double halfWidthG() {
        if (counted >= cohortCount) {
            return 0;
        }
        if (massesG.size() < 2) {
            return Double.NaN;
        }
        double spread = MassStatistics.of(massesG).spreadG();
        double rest = 1 - (double) counted / cohortCount;
        return 2 * spread * StrictMath.sqrt(rest / counted);
    }
}
