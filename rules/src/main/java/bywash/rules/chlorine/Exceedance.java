package bywash.rules.chlorine;

/**
 * Probability that a positive quantity with a stated range exceeds a limit. The quantity is taken as log-normal with
 * the likely value as median and the high value as its 95 % point (Limpert, Stahel and Abbt, 2001, on log-normal
 * ranges); the tail by the logistic approximation 1/(1+exp(-1.702 z)) of the normal, within 0.01 (Haley, 1952, from
 * memory).
 */
final class Exceedance {
    private static final double Z95 = 1.645;

    private Exceedance() {}

    static double probability(double low, double likely, double high, double limit) {
        if (high <= 0) {
            return 0;
        }
        double median = StrictMath.max(likely, StrictMath.max(low, high * 1e-3));
        double sigma = StrictMath.max(0.1, StrictMath.log(StrictMath.max(high, median) / median) / Z95);
        double z = (StrictMath.log(median) - StrictMath.log(limit)) / sigma;
        return 1 / (1 + StrictMath.exp(-1.702 * z));
    }
}
