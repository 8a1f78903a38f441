package bywash.tui.view;

import bywash.tui.view.HistorySource.Bucket;
import java.time.Duration;
import java.util.Arrays;

/** A bounded ring of buckets of one length, oldest given up first; 0 ms long means each value by itself. */
final class Tier {
    private final long lengthMs;
    private final long[] starts;
    private final Bucket[] buckets;
    private int next;
    private int size;

    Tier(Duration length, int capacity) {
        this.lengthMs = length.toMillis();
        this.starts = new long[capacity];
        this.buckets = new Bucket[capacity];
    }

    void add(long timeMs, double value) {
        Bucket one = new Bucket(1, value, value, value);
        long start = lengthMs == 0 ? timeMs : Math.floorDiv(timeMs, lengthMs) * lengthMs;
        int last = Math.floorMod(next - 1, starts.length);
        if (lengthMs > 0 && size > 0 && starts[last] == start) {
            buckets[last] = buckets[last].plus(one);
            return;
        }
        starts[next] = start;
        buckets[next] = one;
        next = (next + 1) % starts.length;
        size = Math.min(size + 1, starts.length);
    }

    /** From when on nothing has been given up, ms. */
    private long complete() {
        return size < starts.length ? Long.MIN_VALUE : starts[next] + lengthMs;
    }

    /** Fills the columns that begin where it is complete, and only those; they are emptied first. */
    void fill(Bucket[] columns, long from, long to) {
        double columnMs = (to - from) / (double) columns.length;
        double known = Math.ceil((complete() - (double) from) / columnMs);
        int first = (int) Math.max(0, Math.min(columns.length, known));
        Arrays.fill(columns, first, columns.length, Bucket.EMPTY);
        for (int i = 0; i < size; i++) {
            int at = Math.floorMod(next - size + i, starts.length);
            if (starts[at] >= from - lengthMs && starts[at] < to) {
                spread(columns, first, (starts[at] - from) / columnMs, lengthMs / columnMs, buckets[at]);
            }
        }
    }

    /** A bucket shorter than a column goes into the one where it begins; a longer one into all that it covers. */
    private static void spread(Bucket[] columns, int first, double start, double length, Bucket bucket) {
        int from = (int) Math.floor(start);
        int to = length <= 1 ? from : (int) Math.ceil(start + length) - 1;
        for (int column = Math.max(first, from); column <= Math.min(columns.length - 1, to); column++) {
            columns[column] = columns[column].plus(bucket);
        }
    }
}
