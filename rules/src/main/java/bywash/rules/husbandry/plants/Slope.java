package bywash.rules.husbandry.plants;

import java.util.List;

/**
 * A straight line by least squares through values over time.
 *
 * <p>Source: C. F. Gauss's least squares, as in any text on regression; the half width is twice the standard error of the slope.
 *
 * @param perDay slope, unit a day
 * @param halfWidth of about the 95 % range, unit a day; NaN with fewer than three points
 */
public record Slope(double perDay, double halfWidth, int points) {
    /** One value. */
    public record Point(double days, double value) {}

    /** @param points at least two, not all at one time */
    public static Slope of(List<Point> points) {
        int n = points.size();
        double meanX = points.stream().mapToDouble(Point::days).average().orElse(Double.NaN);
        double meanY = points.stream().mapToDouble(Point::value).average().orElse(Double.NaN);
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        for (Point p : points) {
            sxx += (p.days() - meanX) * (p.days() - meanX);
            sxy += (p.days() - meanX) * (p.value() - meanY);
            syy += (p.value() - meanY) * (p.value() - meanY);
        }
        if (n < 2 || !(sxx > 0)) {
            throw new IllegalArgumentException("slope of " + n + " points; it must have two at different times");
        }
        double slope = sxy / sxx;
        double rest = Math.max(0, syy - slope * sxy);
        double error = n < 3 ? Double.NaN : StrictMath.sqrt(rest / (n - 2) / sxx);
        return new Slope(slope, 2 * error, n);
    }
}
