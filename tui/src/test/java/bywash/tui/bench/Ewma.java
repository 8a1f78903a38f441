package bywash.tui.bench;

/**
 * Exponentially weighted moving average of standardised values, in its own standard deviations in the long run. S. W.
 * Roberts, 1959, Control chart tests based on geometric moving averages, Technometrics 1, 239-250; J. M. Lucas and M. S.
 * Saccucci, 1990, Technometrics 32, 1-12.
 */
final class Ewma {
    private final double lambda;
    private double mean;

    /** @param lambda weight of the newest value, 0 to 1 */
    Ewma(double lambda) {
        this.lambda = lambda;
    }

    /** Takes one value in standard deviations from the target; returns the signed average in its own. */
    double add(double z) {
        mean += lambda * (z - mean);
        return mean / StrictMath.sqrt(lambda / (2 - lambda));
    }
}
