package bywash.tui.view;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The latest values of each probe, a bounded ring each. One thread adds, another reads. */
public final class TrendBuffer {
    private final int capacity;
    private final Map<String, Ring> rings = new HashMap<>();

    /** @param capacity values kept for each probe, at least 1 */
    public TrendBuffer(int capacity) {
        if (capacity < 1) {
            throw new IllegalArgumentException("capacity is " + capacity + "; it must be at least 1");
        }
        this.capacity = capacity;
    }

    /** Adds a value; one that is not finite is left out. */
    public synchronized void add(String probe, Instant at, double value) {
        if (Double.isFinite(value)) {
            rings.computeIfAbsent(probe, id -> new Ring(capacity)).add(at.toEpochMilli(), value);
        }
    }

    /** The means of equal slices of the span that ends at an instant, oldest first; NaN where a slice has no value. */
    public synchronized List<Double> columns(String probe, Instant end, Duration span, int columns) {
        double[] sums = new double[columns];
        int[] counts = new int[columns];
        Ring ring = rings.get(probe);
        long from = end.minus(span).toEpochMilli();
        for (int i = 0; ring != null && i < ring.size; i++) {
            long offset = ring.times[i] - from;
            int column = (int) Math.min(columns - 1L, Math.floorDiv(offset * columns, span.toMillis()));
            if (column >= 0 && offset <= span.toMillis()) {
                sums[column] += ring.values[i];
                counts[column]++;
            }
        }
        List<Double> means = new ArrayList<>(columns);
        for (int i = 0; i < columns; i++) {
            means.add(counts[i] == 0 ? Double.NaN : sums[i] / counts[i]);
        }
        return means;
    }

    private static final class Ring {
        private final long[] times;
        private final double[] values;
        private int next;
        private int size;

        Ring(int capacity) {
            times = new long[capacity];
            values = new double[capacity];
        }

        void add(long time, double value) {
            times[next] = time;
            values[next] = value;
            next = (next + 1) % times.length;
            size = Math.min(size + 1, times.length);
        }
    }
}
