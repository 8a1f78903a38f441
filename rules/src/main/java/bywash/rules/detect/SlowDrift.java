package bywash.rules.detect;

/**
 * Finds slow flows under siphon swings. A Hann-weighted mean over at least two of the longest cycles takes the sawtooth
 * of every bed out of the level (its side lobes fall below -31 dB at two cycles: F. J. Harris, 1978, On the use of
 * windows for harmonic analysis, Proc. IEEE 66(1), table I); what is left shows a ramp. The mean now is set against the
 * mean one window earlier, and the usual spread of that difference is learned.
 */
final class SlowDrift {
    private static final int WINDOW = 40;
    private static final double SIGMAS = 6;
    private static final double LEAST_L = 9;
    private static final double GAIN = 1.0 / 240;

    private final double[] weights = new double[WINDOW];
    private final double[] minutes = new double[2 * WINDOW];
    private final boolean siphons;
    private int count;
    private double sum;
    private int inMinute;
    private long minute = Long.MIN_VALUE;
    private double spreadL = 2.5;
    private double driftL;

    SlowDrift(boolean siphons) {
        this.siphons = siphons;
        double total = 0;
        for (int i = 0; i < WINDOW; i++) {
            weights[i] = 1 - StrictMath.cos(2 * StrictMath.PI * (i + 0.5) / WINDOW);
            total += weights[i];
        }
        for (int i = 0; i < WINDOW; i++) {
            weights[i] /= total;
        }
    }

    void clear() {
        count = 0;
        inMinute = 0;
        sum = 0;
        minute = Long.MIN_VALUE;
    }

    /** One volume; {@code hold} keeps the learned spread. */
    void add(double tMin, double volumeL, boolean hold) {
        long m = (long) StrictMath.floor(tMin);
        if (m != minute && inMinute > 0) {
            push(sum / inMinute, StrictMath.max(1, m - minute), hold);
            sum = 0;
            inMinute = 0;
        }
        minute = m;
        sum += volumeL;
        inMinute++;
    }

    private void push(double mean, long times, boolean hold) {
        if (times > 5) {
            count = 0;
        }
        for (long k = 0; k < StrictMath.min(times, 5); k++) {
            minutes[count % (2 * WINDOW)] = mean;
            count++;
        }
        if (ready() && !hold) {
            driftL += GAIN * (StrictMath.max(-LEAST_L, StrictMath.min(LEAST_L, differenceL())) - driftL);
            double miss = StrictMath.min(StrictMath.abs(differenceL() - driftL), 3 * spreadL);
            spreadL += GAIN * (miss * 1.2533 - spreadL);
        }
    }

    boolean ready() {
        return siphons && count >= 2 * WINDOW;
    }

    /** Smoothed volume now less one window earlier, L. */
    double differenceL() {
        double now = 0;
        double before = 0;
        for (int i = 0; i < WINDOW; i++) {
            before += weights[i] * minutes[(count + i) % (2 * WINDOW)];
            now += weights[i] * minutes[(count + WINDOW + i) % (2 * WINDOW)];
        }
        return now - before;
    }

    /** 1 for a slow gain, -1 for a slow loss, 0 for neither. Evaporation is learned as drift, up to 9 L a window. */
    int sign() {
        if (!ready()) {
            return 0;
        }
        double d = differenceL() - StrictMath.max(-3, StrictMath.min(1, driftL));
        double limit = StrictMath.max(LEAST_L, SIGMAS * StrictMath.max(1, spreadL));
        return d > limit ? 1 : d < -limit ? -1 : 0;
    }

    double windowMin() {
        return WINDOW;
    }
}
