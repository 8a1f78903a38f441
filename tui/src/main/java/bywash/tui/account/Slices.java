package bywash.tui.account;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Adds readings up to equal slices of a span. */
final class Slices {
    private static final int MOST = 250;
    private static final long[] STEPS_S = {60, 120, 300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400};

    private static final class Sum {
        private long count;
        private double sum;
        private double low = Double.POSITIVE_INFINITY;
        private double high = Double.NEGATIVE_INFINITY;
    }

    private final long stepS;
    private final Map<String, TreeMap<Long, Sum>> probes = new TreeMap<>();

    Slices(Duration span) {
        this.stepS = step(span);
    }

    /** Seconds in a slice: a round number that gives no more than some hundreds. */
    static long step(Duration span) {
        for (long step : STEPS_S) {
            if (span.toSeconds() / step < MOST) {
                return step;
            }
        }
        return STEPS_S[STEPS_S.length - 1];
    }

    void add(String probe, Instant at, double value) {
        add(probe, at, new double[] {1, value, value, value});
    }

    /** @param minute count, low, mean, high */
    void add(String probe, Instant at, double[] minute) {
        Sum sum = probes.computeIfAbsent(probe, p -> new TreeMap<>())
                .computeIfAbsent(Math.floorDiv(at.getEpochSecond(), stepS), n -> new Sum());
        sum.count += (long) minute[0];
        sum.sum += minute[0] * minute[2];
        sum.low = Math.min(sum.low, minute[1]);
        sum.high = Math.max(sum.high, minute[3]);
    }

    /** By probe, oldest first; a slice without a reading is left out. */
    Map<String, List<Slice>> all() {
        Map<String, List<Slice>> all = new TreeMap<>();
        probes.forEach((probe, sums) -> {
            List<Slice> slices = new ArrayList<>();
            sums.forEach((n, s) ->
                    slices.add(new Slice(Instant.ofEpochSecond(n * stepS), s.count, s.low, s.sum / s.count, s.high)));
            all.put(probe, List.copyOf(slices));
        });
        return all;
    }
}
