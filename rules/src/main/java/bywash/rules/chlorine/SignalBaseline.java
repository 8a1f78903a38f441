package bywash.rules.chlorine;

import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * The usual value of a probe and its spread. From the third day on the usual course of the day is taken out first, an
 * offset for each hour of the local day learned over a week. What is left is followed with a time constant of some
 * hours, held while an incident stands. The spread is the mean absolute deviation times 1.2533 (its ratio to the standard
 * deviation of a normal distribution, sqrt(pi/2)), so that single spikes count little.
 */
public final class SignalBaseline {
    private static final double LEARN_S = 1800;
    private static final double TO_SD = 1.2533;
    private static final double DAY_S = 86_400;
    private static final double LATEST_S = 60;
    private static final double LONGEST_GAP_S = 300;
    private static final double DAYS = 7;
    private static final double DAYS_OF_MEAN = 3;

    private final double tauS;
    private final double floor;
    private final DayClock clock;
    private final double[] offset = new double[24];
    private double dayMean;
    private double mean = Double.NaN;
    private double deviation;
    private double latest = Double.NaN;
    private double learnedS;
    private @Nullable Instant last;

    /**
     * @param tauS how slowly the usual value follows, s
     * @param floor least spread, unit of the probe
     * @param zone of the local day
     */
    public SignalBaseline(double tauS, double floor, ZoneId zone) {
        this.tauS = tauS;
        this.floor = floor;
        this.clock = new DayClock(zone);
        this.deviation = floor / TO_SD;
    }

    /**
     * One reading.
     *
     * @param hold true while an incident stands: the baseline stays as it was
     */
    public void add(Instant at, double value, boolean hold) {
        Instant before = last;
        last = at;
        if (before == null) {
            dayMean = value;
            latest = value;
            mean = value;
            return;
        }
        double dt =
                StrictMath.max(0, StrictMath.min(LONGEST_GAP_S, (at.toEpochMilli() - before.toEpochMilli()) / 1000.0));
        double level = value - usualOffset(at);
        latest += (level - latest) * (1 - StrictMath.exp(-dt / LATEST_S));
        if (hold || dt == 0) {
            return;
        }
        learnedS += dt;
        double gain = StrictMath.min(1, StrictMath.max(dt / tauS, dt / learnedS));
        mean += gain * (level - mean);
        deviation += gain * (StrictMath.abs(level - mean) - deviation);
        learnDay(at, value, dt);
    }

    private void learnDay(Instant at, double value, double dt) {
        dayMean += StrictMath.min(1, StrictMath.max(dt / (DAYS_OF_MEAN * DAY_S), dt / learnedS)) * (value - dayMean);
        if (learnedS > DAY_S) {
            int hour = clock.secondOfDay(at) / 3600;
            double days = StrictMath.min(DAYS, StrictMath.floor(learnedS / DAY_S));
            offset[hour] += StrictMath.min(1, dt / 3600 / days) * (value - dayMean - offset[hour]);
        }
    }

    /** The usual course of the day, faded in over the third day and smooth from hour to hour. */
    private double usualOffset(Instant at) {
        double weight = StrictMath.max(0, StrictMath.min(1, learnedS / DAY_S - 2));
        if (weight == 0) {
            return 0;
        }
        double hour = clock.secondOfDay(at) / 3600.0 + 23.5;
        int from = (int) hour % 24;
        double share = hour - StrictMath.floor(hour);
        return weight * ((1 - share) * offset[from] + share * offset[(from + 1) % 24]);
    }

    /** Whether half an hour of quiet water has been learned. */
    public boolean learned() {
        return learnedS >= LEARN_S;
    }

    /** The usual value, without the course of the day; NaN before the first reading. */
    public double usual() {
        return mean;
    }

    /** Smoothed rise over the usual value; NaN before the first reading. */
    public double rise() {
        return latest - mean;
    }

    /** Standard deviation of the usual spread. */
    public double spread() {
        return StrictMath.max(floor, deviation * TO_SD);
    }

    /** The rise in standard deviations of the usual spread; NaN until learned. */
    public double riseSigmas() {
        return learned() ? rise() / spread() : Double.NaN;
    }

    public @Nullable Instant last() {
        return last;
    }
}
