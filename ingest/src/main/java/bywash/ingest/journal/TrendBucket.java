package bywash.ingest.journal;

import java.time.Instant;

/**
 * What one probe read in one span of time. All values in the fixed unit of the probe's quantity.
 *
 * @param from inclusive; @param to exclusive
 * @param count readings in it, at least 1
 */
public record TrendBucket(Instant from, Instant to, int count, double low, double mean, double high) {
    public TrendBucket {
        if (count < 1) {
            throw new IllegalArgumentException(
                    "bucket from " + from + ": count is " + count + "; it must be at least 1");
        }
    }
}
