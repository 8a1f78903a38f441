package bywash.ingest.journal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Trends of a replay or a demo, out of minutes in memory; the oldest go first when there are too many. */
public final class MemoryHistory implements TrendHistory {
    /** Minutes kept a probe: 35 days. */
    private static final int MOST_MINUTES = 35 * 1440;

    private final Map<String, ArrayDeque<Rollup>> minutes = new TreeMap<>();
    private final MinuteMeans open = new MinuteMeans();

    /** Takes a reading. */
    public synchronized void add(String probe, Instant at, double value) {
        open.add(probe, at, value);
        for (Rollup done : open.drain()) {
            ArrayDeque<Rollup> all = minutes.computeIfAbsent(done.probe(), p -> new ArrayDeque<>());
            all.addLast(done);
            if (all.size() > MOST_MINUTES) {
                all.removeFirst();
            }
        }
    }

    @Override
    public synchronized List<TrendBucket> buckets(String probe, Instant from, Instant to, int most) {
        Duration length = TrendHistory.bucketLength(from, to, most);
        Instant first = Instant.ofEpochSecond(Math.floorDiv(from.getEpochSecond(), 60L) * 60);
        List<TrendBucket> all = new ArrayList<>();
        Iterator<Rollup> each = minutes.getOrDefault(probe, new ArrayDeque<>()).iterator();
        while (each.hasNext()) {
            Rollup minute = each.next();
            if (!minute.minute().isBefore(first) && minute.minute().isBefore(to)) {
                add(all, minute, first, length);
            }
        }
        return all;
    }

    private static void add(List<TrendBucket> all, Rollup minute, Instant first, Duration length) {
        long n = Duration.between(first, minute.minute()).dividedBy(length);
        Instant from = first.plus(length.multipliedBy(n));
        int last = all.size() - 1;
        if (last < 0 || !all.get(last).from().equals(from)) {
            all.add(new TrendBucket(
                    from, from.plus(length), minute.count(), minute.low(), minute.mean(), minute.high()));
            return;
        }
        TrendBucket b = all.get(last);
        int count = b.count() + minute.count();
        double mean = (b.mean() * b.count() + minute.mean() * minute.count()) / count;
        all.set(
                last,
                new TrendBucket(
                        from, b.to(), count, Math.min(b.low(), minute.low()), mean, Math.max(b.high(), minute.high())));
    }
}
