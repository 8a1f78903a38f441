package bywash.rules.engine;

import java.time.Instant;

/** Slope by least squares over the last half hour, from at most 64 points kept 30 s apart or more. */
final class Trend {
    private static final int SIZE = 64;
    private static final long SPACING_MS = 30_000;
    private static final long WINDOW_MS = 1_800_000;
    private static final int FEWEST = 10;

    private final long[] ms = new long[SIZE];
    private final double[] values = new double[SIZE];
    private int count;
    private double perHour = Double.NaN;
    /** Worked out when it is asked for: of most probes nobody asks at each reading. */
    private boolean stale;

    void add(Instant at, double value) {
        long t = at.toEpochMilli();
        if (count > 0 && t - ms[(count - 1) % SIZE] < SPACING_MS) {
            return;
        }
        ms[count % SIZE] = t;
        values[count % SIZE] = value;
        count++;
        if (count == 2 * SIZE) {
            count = SIZE;
        }
        stale = true;
    }

    /** Units an hour; NaN with fewer than ten points in the window. */
    double perHour() {
        if (stale) {
            perHour = slope();
            stale = false;
        }
        return perHour;
    }

    private double slope() {
        int held = Math.min(count, SIZE);
        if (held < FEWEST) {
            return Double.NaN;
        }
        long newest = ms[(count - 1) % SIZE];
        double n = 0;
        double sumT = 0;
        double sumV = 0;
        double sumTt = 0;
        double sumTv = 0;
        for (int i = 0; i < held; i++) {
            double t = (ms[i] - newest) / 3_600_000.0;
            if (newest - ms[i] <= WINDOW_MS) {
                n++;
                sumT += t;
                sumV += values[i];
                sumTt += t * t;
                sumTv += t * values[i];
            }
        }
        double spread = n * sumTt - sumT * sumT;
        return n < FEWEST || spread <= 0 ? Double.NaN : (n * sumTv - sumT * sumV) / spread;
    }
}
