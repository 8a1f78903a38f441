package bywash.rules.detect;

import org.jspecify.annotations.Nullable;

/**
 * Guesses from the level alone, without siphons, that the pump stopped or started, where no state probe tells: a stop is a
 * sudden rise that slows down within minutes, and a start a fall that does, since pipes empty and fill exponentially, while
 * an open line does not slow down. What the slope since then says is weighed against its own error: a slope over two or
 * three samples says nothing. What moves more than pipes hold, or is not seen to slow down for longer than they take, is no
 * pump. Minutes, L, L/min.
 */
final class PumpGuess {
    private static final double SUDDEN_L_MIN = 2;
    private static final double WATCH_MIN = 2;
    private static final double LEAST_WATCH_MIN = 4;
    /** Pipes have emptied or filled by then. */
    private static final double LONGEST_WATCH_MIN = 12;
    /** Of its first rate a pipe has so little left after some minutes; an open line has all of it. */
    private static final double LEFT_SHARE = 0.2;
    /** One is believed once it is so much likelier than the other: 99 to 1, as a logarithm. */
    private static final double SURE_LOG_RATIO = 4.6;

    private static final double BEYOND_SIGMAS = 6;
    /** A slope is surely so steep less so many of its standard errors. */
    static final double SURE_SIGMAS = 2;

    private final double pipesL;
    private double suspectMin = Double.NaN;
    private @Nullable SlopeFit suspect;
    private double suspectRate;
    private double suspectL;
    private boolean refreshed;

    /** What watching a sudden flow showed. */
    enum Outcome {
        WATCHING,
        FLOWS_ON,
        SLOWED_DOWN
    }

    /** @param pipesL what pipes hold, L */
    PumpGuess(double pipesL) {
        this.pipesL = pipesL;
    }

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

    /** Watches a flow of that rate from now on, with so much in the vessel. */
    void watch(double nowMin, double rateLMin, SlopeFit fresh, double volumeL) {
        suspectMin = nowMin;
        suspectRate = rateLMin;
        suspectL = volumeL;
        refreshed = false;
        suspect = fresh;
    }

    /** Whether the sudden flow is long enough ago that a slope of its own shows if it slows down. */
    boolean wantsFresh(double nowMin) {
        return !refreshed && nowMin - suspectMin > WATCH_MIN;
    }

    /** Measures from now on; its first rate is at least what was surely seen up to now. */
    void fresh(SlopeFit fit) {
        SlopeFit first = suspect;
        double sign = StrictMath.signum(suspectRate);
        double surely = first == null ? 0 : sign * first.rateLMin() - SURE_SIGMAS * first.seLMin();
        suspectRate = sign * StrictMath.max(StrictMath.abs(suspectRate), surely);
        suspect = fit;
        refreshed = true;
    }

    /** What is known by now, with so much in the vessel. */
    Outcome outcome(double nowMin, double volumeL, double noiseL) {
        SlopeFit c = suspect;
        double age = nowMin - suspectMin;
        if (c == null || age < WATCH_MIN) {
            return Outcome.WATCHING;
        }
        if ((volumeL - suspectL) * StrictMath.signum(suspectRate) > pipesL + BEYOND_SIGMAS * noiseL) {
            return Outcome.FLOWS_ON;
        }
        double flowsOn = flowsOn(c);
        boolean late = age > LONGEST_WATCH_MIN;
        if (flowsOn < -SURE_LOG_RATIO || late && flowsOn < 0) {
            return Outcome.SLOWED_DOWN;
        }
        boolean sure = flowsOn > SURE_LOG_RATIO || late;
        return sure && age >= LEAST_WATCH_MIN ? Outcome.FLOWS_ON : Outcome.WATCHING;
    }

    /** Log likelihood ratio of the slope for a flow that goes on at its first rate against one that has slowed down. */
    private double flowsOn(SlopeFit fit) {
        double se = fit.seLMin();
        double on = (fit.rateLMin() - suspectRate) / se;
        double slowed = (fit.rateLMin() - LEFT_SHARE * suspectRate) / se;
        return Double.isFinite(se) ? (slowed * slowed - on * on) / 2 : 0;
    }
}
