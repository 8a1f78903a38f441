package bywash.rules.detect;

import bywash.rules.detect.Stretch.Usual;
import org.jspecify.annotations.Nullable;

/**
 * When a flow that runs took up another rate: the slopes before and after are set against each other for every time at which
 * somebody may have turned the valve, and those times are weighed by how likely they make what was seen. Minutes, L/min.
 *
 * <p>Source: as {@link FlowSpan}; D. V. Hinkley, 1969, as {@link Bend}.
 *
 * @param tMin mean of the times at which it may have been
 * @param sdMin one standard deviation of it
 * @param before the slope up to the likeliest time
 * @param after the slope from there on
 * @param both whether each half of the time since then shows it: an unseen drain lifts only one
 */
record Turn(double tMin, double sdMin, Slope before, Slope after, boolean both) {
    private static final double STEP_MIN = 0.5;
    /** Half-minute means tell a time no better. */
    private static final double LEAST_SD_MIN = 0.25;

    private static final double LEAST_MIN = 3 - 1e-6;
    private static final double HALF_SIGMAS = 2;

    /**
     * The likeliest turn of a flow; null where too little was seen to tell of any.
     *
     * @param onsetMin when the flow began
     * @param fromMin the first time that is tried
     */
    static @Nullable Turn likeliest(FlowHistory history, double onsetMin, double fromMin, double nowMin, Usual usual) {
        double weight = 0;
        double sum = 0;
        double squares = 0;
        double most = Double.NEGATIVE_INFINITY;
        double bestMin = Double.NaN;
        for (double at = fromMin; at <= nowMin - LEAST_MIN; at += STEP_MIN) {
            Slope before = history.slope(onsetMin, at, usual);
            Slope after = history.slope(at, nowMin, usual);
            if (!(after.minutes() >= LEAST_MIN && before.minutes() > 0)) {
                continue;
            }
            double z = sigmas(before, after);
            double log = z * z / 2;
            if (log > most) {
                double fade = StrictMath.exp(most - log);
                weight *= fade;
                sum *= fade;
                squares *= fade;
                most = log;
                bestMin = at;
            }
            double w = StrictMath.exp(log - most);
            double t = at - fromMin;
            weight += w;
            sum += w * t;
            squares += w * t * t;
        }
        if (Double.isNaN(bestMin)) {
            return null;
        }
        double mean = sum / weight;
        double sd = StrictMath.sqrt(StrictMath.max(0, squares / weight - mean * mean));
        Slope before = history.slope(onsetMin, bestMin, usual);
        double middle = (bestMin + nowMin) / 2;
        double first = sigmas(before, history.slope(bestMin, middle, usual));
        double second = sigmas(before, history.slope(middle, nowMin, usual));
        boolean both = StrictMath.min(first, second) > HALF_SIGMAS || StrictMath.max(first, second) < -HALF_SIGMAS;
        Slope after = history.slope(bestMin, nowMin, usual);
        return new Turn(fromMin + mean, StrictMath.max(LEAST_SD_MIN, sd), before, after, both);
    }

    /** By how much the rate changed. */
    double byLMin() {
        return after.rateLMin() - before.rateLMin();
    }

    /** The same in standard errors. */
    double sigmas() {
        return sigmas(before, after);
    }

    /** 0 where one of them was not seen. */
    private static double sigmas(Slope before, Slope after) {
        return (after.rateLMin() - before.rateLMin()) / StrictMath.hypot(before.seLMin(), after.seLMin());
    }
}
