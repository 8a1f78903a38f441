package bywash.ingest.journal;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Adds readings up to minutes. A minute is given out once a later one has begun. For one thread. */
public final class MinuteMeans {
    private static final class Sum {
        private final Instant minute;
        private int count;
        private double sum;
        private double low = Double.POSITIVE_INFINITY;
        private double high = Double.NEGATIVE_INFINITY;

        Sum(Instant minute) {
            this.minute = minute;
        }

        void add(double value) {
            count++;
            sum += value;
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
    }

    private final Map<String, Sum> open = new TreeMap<>();
    private List<Rollup> done = new ArrayList<>();

    /** Takes a reading; one of an earlier minute than the probe's present one is counted to the present one. */
    public void add(String probe, Instant at, double value) {
        Instant minute = at.truncatedTo(ChronoUnit.MINUTES);
        Sum sum = open.get(probe);
        if (sum == null || minute.isAfter(sum.minute)) {
            close(probe, sum);
            sum = new Sum(minute);
            open.put(probe, sum);
        }
        sum.add(value);
    }

    private void close(String probe, @Nullable Sum sum) {
        if (sum != null) {
            done.add(new Rollup(probe, sum.minute, sum.count, sum.sum / sum.count, sum.low, sum.high));
        }
    }

    /** Takes the minutes that are over. */
    public List<Rollup> drain() {
        if (done.isEmpty()) {
            return List.of();
        }
        List<Rollup> taken = done;
        done = new ArrayList<>();
        return taken;
    }

    /** Takes all there is, also the minutes still running: for the end of a watch. */
    public List<Rollup> finish() {
        open.forEach(this::close);
        open.clear();
        return drain();
    }
}
