package bywash.tui.chart;

import bywash.tui.view.HistorySource.Bucket;
import java.util.ArrayList;
import java.util.List;

/** Slices shorter than the probe's interval have no reading of their own; such gaps are bridged, longer ones stay open. */
final class Gaps {
    private Gaps() {}

    /** @param reach how many slices a reading speaks for; a gap up to this is bridged in a straight line */
    static List<Bucket> bridged(List<Bucket> slices, double reach) {
        List<Bucket> all = new ArrayList<>(slices);
        int before = -1;
        for (int i = 0; i < slices.size(); i++) {
            if (slices.get(i).count() == 0) {
                continue;
            }
            if (before >= 0 && i - before > 1 && i - before <= reach) {
                bridge(all, before, i);
            }
            before = i;
        }
        return all;
    }

    private static void bridge(List<Bucket> slices, int from, int to) {
        double start = slices.get(from).mean();
        double end = slices.get(to).mean();
        for (int i = from + 1; i < to; i++) {
            double value = start + (end - start) * (i - from) / (to - from);
            slices.set(i, new Bucket(1, value, value, value));
        }
    }
}
