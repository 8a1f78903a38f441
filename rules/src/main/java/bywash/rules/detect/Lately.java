package bywash.rules.detect;

import bywash.rules.detect.Stretch.Bounds;
import bywash.rules.detect.Stretch.Usual;
import java.util.List;

/**
 * What the stretches of the last minutes alone say.
 *
 * @param fromMin where they begin
 * @param gapMin how long before that nothing was seen
 * @param minutes of them
 * @param alike whether each of them lies on the same side of a rate, by two of its own standard errors
 */
record Lately(double rateLMin, double seLMin, double fromMin, double gapMin, double minutes, boolean alike) {
    /** Shorter ones tell no slope of their own. */
    private static final double LEAST_STRETCH_MIN = 1 - 1e-6;

    /**
     * Of the last stretches from a time on, against a rate; without any, of no minutes.
     *
     * @param leastMin at least so many minutes of them
     * @param leastCount at least so many
     */
    static Lately of(
            FlowHistory history, double fromMin, double leastMin, int leastCount, double thanLMin, Usual usual) {
        double shortest = StrictMath.min(leastMin, LEAST_STRETCH_MIN);
        List<Bounds> bounds = history.stretches(fromMin);
        double weight = 0;
        double sum = 0;
        double minutes = 0;
        double from = Double.NaN;
        double before = fromMin;
        int above = 0;
        int below = 0;
        int count = 0;
        for (int b = bounds.size() - 1; b >= 0; b--) {
            Bounds at = bounds.get(b);
            if (minutes >= leastMin && count >= leastCount) {
                before = at.endMin();
                break;
            }
            if (at.endMin() - at.startMin() < shortest) {
                continue;
            }
            Stretch s = Stretch.level(history, at, usual);
            double w = 1 / s.slopeVar();
            double z = (s.slope() - thanLMin) * StrictMath.sqrt(w);
            above += z > 2 ? 1 : 0;
            below += z < -2 ? 1 : 0;
            count++;
            weight += w;
            sum += w * s.slope();
            minutes += at.endMin() - at.startMin();
            from = at.startMin();
        }
        boolean alike = count > 0 && (above == count || below == count);
        return new Lately(sum / weight, 1 / StrictMath.sqrt(weight), from, from - before, minutes, alike);
    }
}
