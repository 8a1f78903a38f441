package bywash.rules.detect;

import org.jspecify.annotations.Nullable;

/**
 * Guesses from the level alone that the pump stopped or started, where no state probe tells. Under siphons a sump that
 * neither falls nor rises has no pump; without siphons a stop is a sudden rise that slows down within minutes, and a
 * start a fall that does: pipes empty and fill exponentially, an open line does not slow down.
 */
final class PumpGuess {
    private static final double SUDDEN_L_MIN = 2;
    private static final double WATCH_MIN = 2;
    private static final double LONGEST_WATCH_MIN = 4;

    /** What watching a sudden flow showed. */
    enum Outcome {
        WATCHING,
        FLOWS_ON,
        SLOWED_DOWN
    }

    private double suspectMin = Double.NaN;
    private @Nullable SlopeFit suspect;
    private double suspectRate;
    private boolean refreshed;

    void clear() {
        suspect = null;
        suspectMin = Double.NaN;
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
