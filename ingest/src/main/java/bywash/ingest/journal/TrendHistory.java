package bywash.ingest.journal;

import java.time.Duration;
import java.time.Instant;
import java.util.List;

/** What probes read over days and months, for trends. Any thread may ask. */
public interface TrendHistory {
    /** Where nothing is kept. */
    TrendHistory NONE = (probe, from, to, most) -> List.of();

    /**
     * Buckets of equal length, oldest first. A span without a reading has no bucket, so that a gap stays a gap. The last
     * minute may be missing. A month of one probe takes well under 100 ms.
     *
     * @param from inclusive; @param to exclusive
     * @param most buckets wanted at most, at least 1; a bucket is a whole number of minutes, one or more
     */
    List<TrendBucket> buckets(String probe, Instant from, Instant to, int most);

    /** The length of the buckets that an answer has. */
    static Duration bucketLength(Instant from, Instant to, int most) {
        if (most < 1) {
            throw new IllegalArgumentException("most is " + most + "; it must be at least 1");
        }
        long seconds = Math.max(0, Duration.between(from, to).getSeconds());
        long minutes = Math.max(1, -Math.floorDiv(-seconds, 60L * most));
        return Duration.ofMinutes(minutes);
    }
}
