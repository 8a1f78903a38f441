package bywash.tui.chart;

import bywash.tui.view.HistorySource.Bucket;
import java.util.List;

/** The value axis: what stands at the lower and at the upper edge. */
public record Scale(double low, double high) {
    public Scale {
        if (!(low < high)) {
            throw new IllegalArgumentException("scale from " + low + " to " + high);
        }
    }

    /** Holds all values, with a little air, and spans at least so much, so that noise stays flat. */
    public static Scale of(List<Bucket> buckets, double leastSpan) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Bucket bucket : buckets) {
            if (bucket.count() > 0) {
                low = Math.min(low, bucket.low());
                high = Math.max(high, bucket.high());
            }
        }
        if (low > high) {
            return new Scale(0, leastSpan);
        }
        double middle = (low + high) / 2;
        double half = Math.max(leastSpan, (high - low) * 1.05) / 2;
        return new Scale(middle - half, middle + half);
    }

    /** The step of a value from the lower edge, 0 to steps - 1; values outside stay at the edge. */
    int step(double value, int steps) {
        double share = (value - low) / (high - low);
        return (int) Math.max(0, Math.min(steps - 1.0, Math.floor(share * steps)));
    }

    /** The row of a value counted from the top; -1 where it lies outside. */
    public int row(double value, int rows) {
        return value >= low && value <= high ? rows - 1 - step(value, rows) : -1;
    }
}
