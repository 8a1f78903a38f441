package bywash.ingest.journal;

/**
 * What one probe read in one slice of time. All values in the fixed unit of the probe's quantity.
 *
 * @param slice which one, from 0
 * @param count readings in it, at least 1
 */
public record TrendBucket(int slice, int count, double low, double mean, double high) {
    public TrendBucket {
        if (count < 1) {
            throw new IllegalArgumentException("slice " + slice + ": count is " + count + "; it must be at least 1");
        }
    }
}
