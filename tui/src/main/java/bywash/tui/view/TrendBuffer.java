package bywash.tui.view;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Past values in memory, bounded: for each probe the latest values, minutes for a week, hours for a season. One thread
 * adds, another reads.
 */
public final class TrendBuffer implements HistorySource {
    private static final int WEEK_OF_MINUTES = 7 * 24 * 60;
    private static final int SEASON_OF_HOURS = 120 * 24;

    private final int capacity;
    private final Map<String, List<Tier>> probes = new HashMap<>();

    /** @param capacity latest values kept for each probe, at least 1 */
    public TrendBuffer(int capacity) {
        if (capacity < 1) {
            throw new IllegalArgumentException("capacity is " + capacity + "; it must be at least 1");
        }
        this.capacity = capacity;
    }

    /** Adds a value; one that is not finite is left out. */
    public synchronized void add(String probe, Instant at, double value) {
        if (Double.isFinite(value)) {
            for (Tier tier : probes.computeIfAbsent(probe, id -> tiers())) {
                tier.add(at.toEpochMilli(), value);
            }
        }
    }

    private List<Tier> tiers() {
        return List.of(
                new Tier(Duration.ZERO, capacity),
                new Tier(Duration.ofMinutes(1), WEEK_OF_MINUTES),
                new Tier(Duration.ofHours(1), SEASON_OF_HOURS));
    }

    /** Each column from the finest tier that still has it whole. */
    @Override
    public synchronized List<Bucket> buckets(String probe, Instant from, Instant to, int count) {
        Bucket[] columns = new Bucket[count];
        Arrays.fill(columns, Bucket.EMPTY);
        List<Tier> tiers = probes.get(probe);
        if (tiers != null && count > 0 && from.isBefore(to)) {
            for (int i = tiers.size() - 1; i >= 0; i--) {
                tiers.get(i).fill(columns, from.toEpochMilli(), to.toEpochMilli());
            }
        }
        return List.of(columns);
    }
}
