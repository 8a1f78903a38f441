package bywash.tui.bench;

/**
 * Two-sided tabular CUSUM of standardised values. E. S. Page, 1954, Continuous inspection schemes, Biometrika 41, 100-115;
 * D. C. Montgomery, Introduction to Statistical Quality Control, chapter on cumulative sums.
 */
final class Cusum {
    private final double k;
    private double high;
    private double low;

    /** @param k allowance in standard deviations, half the shift to be found */
    Cusum(double k) {
        this.k = k;
    }

    /** Takes one value in standard deviations from the target; returns the greater of both sums. */
    double add(double z) {
        high = StrictMath.max(0, high + z - k);
        low = StrictMath.max(0, low - z - k);
        return StrictMath.max(high, low);
    }

    /** The sum of what lies above the target. */
    double high() {
        return high;
    }
}
