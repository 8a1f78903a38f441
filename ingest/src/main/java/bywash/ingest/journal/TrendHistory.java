package bywash.ingest.journal;

import java.time.Instant;
import java.util.List;

/** What probes read over days and months, for trends. Any thread may ask. */
public interface TrendHistory {
    /** Where nothing is kept. */
    TrendHistory NONE = (probe, from, to, slices) -> List.of();

    /**
     * The readings of equal slices of a span, oldest first. A slice without a reading is left out, so that a gap stays a gap.
     * A minute belongs to the slice in which it begins; the last minute may be missing. A month of one probe takes well
     * under 100 ms.
     *
     * @param from inclusive
     * @param to exclusive
     * @param slices at least 1
     */
    List<TrendBucket> buckets(String probe, Instant from, Instant to, int slices);
}
