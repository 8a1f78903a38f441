package bywash.rules.detect;

import org.jspecify.annotations.Nullable;

/**
 * One guess at which bed drained when, and what follows from it: a Kalman filter over what each bed holds, the flow that
 * fills it, and the sum of sump and beds, which only water from outside can change.
 *
 * <p>State: contents c of each bed, L; flows f into each, L/min; total K, L. A bed that drained starts again from its
 * residue, whatever it held: its error ends there. The sump then shows S = K - sum c.
 *
 * <p>Source: R. E. Kalman, 1960, A new approach to linear filtering and prediction problems, J. Basic Eng. 82(1), 35-45;
 * the test for ramps as {@link RampGlr}.
 */
final class BedFilter {
    private static final double RESIDUE_L = 2;
    private static final double RESIDUE_VAR = 1;
    private static final double END_SD_MIN = 0.15;
    private static final double TOTAL_WALK_VAR = 1.0 / 60;
    private static final double FLOW_WALK_VAR = 0.05 * 0.05 / 60;
    private static final double FIRST_TRIP_L = 78;
    private static final double FIRST_TRIP_SD = 18;
    private static final double LEAST_TRIP_L = 35;
    private static final double MOST_TRIP_L = 120;
    private static final double LEAST_TRIP_SD = 3;
    private static final double SPACING_MIN = 2;

    final int beds;
    private final int n;
    final double[] drainedMin;
    final double[] tripL;
    private final double[] tripVar;
    private final int[] drains;
    double logLikelihood;
    double misfit = 1;
    private final double[] x;
    /** Covariance of the state, row by row. */
    private final double[] p;

    private final RampScores ramps;
    private double nextOnsetMin;
    private @Nullable Seen seen;

    /** What a volume told that the ramps are still to be told. */
    private record Seen(double tMin, double innovation, double variance, double[] gain) {}

    /** The start: nothing known but the flow of the pump and the sump's level. */
    BedFilter(int beds, double pumpLMin, double sumpL) {
        this.beds = beds;
        this.n = 2 * beds + 1;
        this.x = new double[n];
        this.p = new double[n * n];
        this.ramps = new RampScores(n);
        this.drainedMin = new double[beds];
        this.tripL = new double[beds];
        this.tripVar = new double[beds];
        this.drains = new int[beds];
        for (int i = 0; i < beds; i++) {
            x[i] = FIRST_TRIP_L / 2;
            p[at(i, i)] = 26 * 26;
            x[beds + i] = pumpLMin / beds;
            drainedMin[i] = Double.NEGATIVE_INFINITY;
            tripL[i] = FIRST_TRIP_L;
            tripVar[i] = FIRST_TRIP_SD * FIRST_TRIP_SD;
        }
        double share = 0.3 * pumpLMin / beds;
        for (int i = 0; i < beds; i++) {
            for (int j = 0; j < beds; j++) {
                p[at(beds + i, beds + j)] = share * share * ((i == j ? 1 : 0) - 0.98 / beds);
            }
        }
        x[n - 1] = sumpL + FIRST_TRIP_L / 2 * beds;
        p[at(n - 1, n - 1)] = 100 * 100;
    }

    private BedFilter(BedFilter o) {
        this.beds = o.beds;
        this.n = o.n;
        this.x = o.x.clone();
        this.p = o.p.clone();
        this.ramps = o.ramps.copy();
        this.drainedMin = o.drainedMin.clone();
        this.tripL = o.tripL.clone();
        this.tripVar = o.tripVar.clone();
        this.drains = o.drains.clone();
        this.logLikelihood = o.logLikelihood;
        this.misfit = o.misfit;
        this.nextOnsetMin = o.nextOnsetMin;
    }

    private int at(int row, int column) {
        return row * n + column;
    }

    /** A copy; this one must not change from here on. */
    BedFilter copy() {
        return new BedFilter(this);
    }

    int drains(int bed) {
        return drains[bed];
    }

    RampScores ramps() {
        return ramps;
    }

    /** All beds fill for so long. */
    void fill(double minutes) {
        for (int i = 0; i < beds; i++) {
            x[i] += x[beds + i] * minutes;
            addRow(i, beds + i, minutes);
            p[at(beds + i, beds + i)] += FLOW_WALK_VAR * minutes;
        }
        p[at(n - 1, n - 1)] += TOTAL_WALK_VAR * minutes;
        for (int i = 0; i < beds; i++) {
            ramps.adds(i, beds + i, minutes);
        }
    }

    private void addRow(int to, int from, double times) {
        for (int j = 0; j < n; j++) {
            p[at(to, j)] += times * p[at(from, j)];
        }
        for (int i = 0; i < n; i++) {
            p[at(i, to)] += times * p[at(i, from)];
        }
    }

    /** The total may have changed by any amount; ramps start anew. */
    void loosenTotal() {
        p[at(n - 1, n - 1)] += 300 * 300;
        ramps.clear();
    }

    /** What the beds hold is no longer known; their flows and trips are. */
    void loosenBeds() {
        loosenTotal();
        for (int i = 0; i < beds; i++) {
            p[at(i, i)] += 30 * 30;
        }
    }

    /** Log likelihood that bed {@code i} trips with what it holds now. */
    double tripLog(int i) {
        double var = tripVar[i] + p[at(i, i)];
        double miss = x[i] - tripL[i];
        return -0.5 * miss * miss / var - 0.5 * StrictMath.log(var);
    }

    /** Log likelihood that bed {@code i} has not tripped yet. */
    double fullLog(int i) {
        double over = (x[i] - tripL[i]) / StrictMath.sqrt(tripVar[i] + p[at(i, i)]);
        return over > 0 ? -0.5 * over * over - 0.7 * over : 0;
    }

    /** Bed {@code i} has drained, its siphon stopping {@code agoMin} before now, give or take {@code sdMin}. */
    void drained(int i, double atMin, double agoMin, double sdMin) {
        learnTrip(i);
        drainedMin[i] = atMin - agoMin;
        double flow = x[beds + i];
        x[i] = RESIDUE_L + flow * agoMin;
        for (int j = 0; j < n; j++) {
            p[at(i, j)] = agoMin * p[at(beds + i, j)];
        }
        for (int j = 0; j < n; j++) {
            p[at(j, i)] = agoMin * p[at(j, beds + i)];
        }
        double sd = StrictMath.sqrt(END_SD_MIN * END_SD_MIN + sdMin * sdMin);
        p[at(i, i)] = agoMin * agoMin * p[at(beds + i, beds + i)] + RESIDUE_VAR + flow * flow * sd * sd;
        ramps.becomes(i, beds + i, agoMin);
    }

    private void learnTrip(int i) {
        drains[i]++;
        double var = p[at(i, i)] + LEAST_TRIP_SD * LEAST_TRIP_SD;
        double gain = StrictMath.max(0.08, 1.0 / (drains[i] + 1)) * tripVar[i] / (tripVar[i] + p[at(i, i)]);
        double miss = x[i] - tripL[i];
        tripL[i] = StrictMath.max(LEAST_TRIP_L, StrictMath.min(MOST_TRIP_L, tripL[i] + gain * miss));
        double seen = StrictMath.max(LEAST_TRIP_SD * LEAST_TRIP_SD, miss * miss);
        tripVar[i] += gain * (StrictMath.min(seen, 4 * tripVar[i]) - tripVar[i]) * (p[at(i, i)] < var ? 1 : 0.5);
        tripVar[i] = StrictMath.max(LEAST_TRIP_SD * LEAST_TRIP_SD, tripVar[i]);
    }

    /** The sump holds {@code sumpL}, with the variance of that mean. */
    void observe(double tMin, double sumpL, double variance) {
        double[] ph = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = p[at(i, n - 1)];
            for (int j = 0; j < beds; j++) {
                sum -= p[at(i, j)];
            }
            ph[i] = sum;
        }
        double v = ph[n - 1] + variance;
        double expected = x[n - 1];
        for (int j = 0; j < beds; j++) {
            v -= ph[j];
            expected -= x[j];
        }
        double innovation = sumpL - expected;
        double share = innovation * innovation / v;
        logLikelihood -= 0.5 * StrictMath.min(share, 40) + 0.5 * StrictMath.log(v);
        misfit += 0.008 * (StrictMath.min(share, 25) - misfit);
        double used = share > 16 ? v * share / 16 : v;
        double[] gain = new double[n];
        for (int i = 0; i < n; i++) {
            gain[i] = ph[i] / used;
        }
        seen = new Seen(tMin, innovation, used, gain);
        for (int i = 0; i < n; i++) {
            x[i] += gain[i] * innovation;
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                p[at(i, j)] -= ph[i] * ph[j] / used;
            }
        }
    }

    /** Tells the ramps of the last volume: of a guess that is worth it. */
    void tellRamps() {
        Seen last = seen;
        if (last == null) {
            return;
        }
        seen = null;
        ramps.innovation(last.tMin(), beds, last.innovation(), last.variance(), last.gain());
        if (last.tMin() >= nextOnsetMin) {
            ramps.begin(last.tMin());
            nextOnsetMin = last.tMin() + SPACING_MIN;
        }
    }

    /** Standard error of the total, L. */
    double totalSe() {
        return StrictMath.sqrt(StrictMath.max(0, p[at(n - 1, n - 1)]));
    }

    double totalL() {
        return x[n - 1];
    }

    double flowLMin(int bed) {
        return x[beds + bed];
    }

    double contentL(int bed) {
        return x[bed];
    }
}
