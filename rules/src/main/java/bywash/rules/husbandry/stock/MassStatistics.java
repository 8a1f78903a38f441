package bywash.rules.husbandry.stock;

import java.util.List;

/**
 * What a set of fish weighed one by one adds up to. All masses in g.
 *
 * @param spreadG standard deviation with n - 1; NaN for fewer than two fish
 */
public record MassStatistics(
        int count, double totalG, double meanG, double medianG, double spreadG, double smallestG, double largestG) {

    /** @param massesG at least one */
    public static MassStatistics of(List<Double> massesG) {
        if (massesG.isEmpty()) {
            throw new IllegalArgumentException("massesG is empty; it must have at least one fish");
        }
        double[] sorted =
                massesG.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        int n = sorted.length;
        double total = 0;
        for (double mass : sorted) {
            total += mass;
        }
        double mean = total / n;
        double squares = 0;
        for (double mass : sorted) {
            squares += (mass - mean) * (mass - mean);
        }
        double median = n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
        double spread = n < 2 ? Double.NaN : StrictMath.sqrt(squares / (n - 1));
        return new MassStatistics(n, total, mean, median, spread, sorted[0], sorted[n - 1]);
    }

    /** Spread as a share of the mean, %; NaN for fewer than two fish. */
    public double variationPercent() {
        return 100 * spreadG / meanG;
    }
}
