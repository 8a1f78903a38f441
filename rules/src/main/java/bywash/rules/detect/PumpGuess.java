package bywash.rules.detect;

import org.jspecify.annotations.Nullable;

/**
 * Guesses from the level alone that the pump stopped or started, where no state probe tells. Under siphons a sump that
 * neither falls nor rises has no pump; without siphons a stop is a sudden rise that slows down within minutes, and a
 * start a fall that does: pipes empty and fill exponentially, an open line does not slow down.
 */
final class PumpGuess {
    private static final double FLAT_SHARE = 0.25;
    private static final double FLAT_MIN = 3;
    private static final double RUN_SHARE = 0.5;
    private static final double RUN_MIN = 1;
    private static final double SUDDEN_L_MIN = 2;
    private static final double WATCH_MIN = 2;
    private static final double LONGEST_WATCH_MIN = 4;

    /** What watching a sudden flow showed. */
    enum Outcome {
        WATCHING,
        FLOWS_ON,
        SLOWED_DOWN
    }

    private final double[] times = new double[64];
    private final double[] litres = new double[64];
    private int count;
    private double suspectMin = Double.NaN;
    private @Nullable SlopeFit suspect;
    private double suspectRate;
    private boolean refreshed;

    void add(double tMin, double volumeL) {
        times[count % times.length] = tMin;
        litres[count % litres.length] = volumeL;
        count++;
    }

    void clear() {
        count = 0;
        suspect = null;
        suspectMin = Double.NaN;
    }

    /** Whether the level has stood for minutes while beds should be filling. */
    boolean standsStill(double fillLMin, double noiseL) {
        double slope = slope(FLAT_MIN);
        double half = slope(FLAT_MIN / 2);
        double error = noiseL / FLAT_MIN;
        double limit = FLAT_SHARE * StrictMath.abs(fillLMin);
        return StrictMath.abs(slope) < limit - error && StrictMath.abs(half) < limit + 2 * error;
    }

    /** Whether the level falls again as it does with beds filling. */
    boolean runs(double fillLMin, double noiseL) {
        return slope(RUN_MIN) < RUN_SHARE * fillLMin - noiseL / RUN_MIN;
    }

    private double slope(double minutes) {
        if (count < 4) {
            return Double.NaN;
        }
        int last = (count - 1) % times.length;
        int most = StrictMath.min(count, times.length);
        for (int back = 2; back < most; back++) {
            int i = (count - 1 - back) % times.length;
            if (times[last] - times[i] >= minutes) {
                return (mean(0) - mean(back)) / (times[last] - times[i]);
            }
        }
        return Double.NaN;
    }

    private double mean(int back) {
        int a = (count - 1 - back) % litres.length;
        return litres[a];
    }

    /** Whether a flow is sudden enough to be the pump. */
    static boolean sudden(double rateLMin) {
        return StrictMath.abs(rateLMin) >= SUDDEN_L_MIN;
    }

    boolean watching() {
        return suspect != null;
    }

    void watch(double nowMin, double rateLMin, SlopeFit fresh) {
        suspectMin = nowMin;
        suspectRate = rateLMin;
        refreshed = false;
        suspect = fresh;
    }

    /** Whether the sudden flow is long enough ago that a slope of its own shows if it slows down. */
    boolean wantsFresh(double nowMin) {
        return !refreshed && nowMin - suspectMin > WATCH_MIN;
    }

    void fresh(SlopeFit fit) {
        suspect = fit;
        refreshed = true;
    }

    Outcome outcome(double nowMin) {
        SlopeFit c = suspect;
        double age = nowMin - suspectMin;
        if (c == null || age < WATCH_MIN) {
            return Outcome.WATCHING;
        }
        double share = c.rateLMin() / suspectRate;
        if (share < 0.6 && (refreshed ? age > LONGEST_WATCH_MIN : age > WATCH_MIN)) {
            return Outcome.SLOWED_DOWN;
        }
        return age < LONGEST_WATCH_MIN ? Outcome.WATCHING : share > 0.6 ? Outcome.FLOWS_ON : Outcome.SLOWED_DOWN;
    }
}
