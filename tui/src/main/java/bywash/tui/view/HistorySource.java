package bywash.tui.view;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Where past values of a probe come from: memory, or a journal. Asked from the screen's thread; must not block long. */
public interface HistorySource {

    /**
     * The readings of one slice of time.
     *
     * @param count readings in it; 0 leaves the rest NaN
     * @param low in the probe's unit, as are mean and high
     */
    record Bucket(int count, double low, double mean, double high) {
        public static final Bucket EMPTY = new Bucket(0, Double.NaN, Double.NaN, Double.NaN);

        /** Both together. */
        public Bucket plus(Bucket other) {
            if (count == 0 || other.count == 0) {
                return count == 0 ? other : this;
            }
            int both = count + other.count;
            return new Bucket(
                    both,
                    Math.min(low, other.low),
                    (mean * count + other.mean * other.count) / both,
                    Math.max(high, other.high));
        }
    }

    /** Equal slices from an instant (inclusive) to another (exclusive), oldest first, as many as asked for. */
    List<Bucket> buckets(String probe, Instant from, Instant to, int count);

    /** The means of equal slices of the span that ends at an instant, that instant included; NaN where there is none. */
    default List<Double> columns(String probe, Instant end, Duration span, int columns) {
        Instant to = end.plusMillis(1);
        List<Double> means = new ArrayList<>(columns);
        buckets(probe, to.minus(span), to, columns).forEach(b -> means.add(b.mean()));
        return means;
    }
}
