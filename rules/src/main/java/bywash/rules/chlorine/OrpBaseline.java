package bywash.rules.chlorine;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * The usual oxidation potential of the water and its spread, learned with a time constant of six hours and held while
 * an incident stands. The spread is the mean absolute deviation times 1.2533 (its ratio to the standard deviation of
 * a normal distribution, sqrt(pi/2)), so that single spikes count little.
 */
public final class OrpBaseline {
    private static final double TAU_S = 6 * 3600.0;
    private static final double LEARN_S = 1800;
    private static final double FLOOR_MV = 2.0;
    private static final double TO_SD = 1.2533;

    private double meanMv = Double.NaN;
    private double deviationMv = FLOOR_MV;
    private double latestMv = Double.NaN;
    private double learnedS;
    private @Nullable Instant last;

    /**
     * One reading.
     *
     * @param hold true while an incident stands: the baseline stays as it was
     */
    public void add(Instant at, double orpMv, boolean hold) {
        if (last == null) {
            last = at;
            latestMv = orpMv;
            meanMv = orpMv;
            return;
        }
        double dt = StrictMath.max(0, StrictMath.min(300, (at.toEpochMilli() - last.toEpochMilli()) / 1000.0));
        last = at;
        latestMv += (orpMv - latestMv) * (1 - StrictMath.exp(-dt / 60));
        if (hold || dt == 0) {
            return;
        }
        learnedS += dt;
        double gain = StrictMath.max(dt / TAU_S, dt / StrictMath.max(dt, learnedS));
        gain = StrictMath.min(1, gain);
        meanMv += gain * (orpMv - meanMv);
        deviationMv += gain * (StrictMath.abs(orpMv - meanMv) - deviationMv);
    }

    /** Whether half an hour of quiet water has been learned. */
    public boolean learned() {
        return learnedS >= LEARN_S;
    }

    /** Smoothed rise over the baseline, mV; NaN before the first reading. */
    public double riseMv() {
        return latestMv - meanMv;
    }

    /** The rise in standard deviations of the usual spread; NaN until learned. */
    public double riseSigmas() {
        return learned() ? riseMv() / StrictMath.max(FLOOR_MV, deviationMv * TO_SD) : Double.NaN;
    }

    public @Nullable Instant last() {
        return last;
    }
}
