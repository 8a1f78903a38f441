package bywash.rules.detect;

/**
 * Median of three: a single spike never gets through; delays by one sample. Also estimates the noise, and knows a probe
 * that reads in steps: between two readings of such a probe nothing smaller than its step is ever seen.
 */
final class SpikeGuard {
    private static final double TO_SD = 1.2533;
    private static final double FASTEST_L_MIN = 60;
    private static final int ODD_IN_A_ROW = 4;
    private static final int STEPS = 64;
    private static final int LEAST_SAMPLES = 20;
    /** Error of a stepped reading is held for long times, so it counts for more than step / sqrt(12). */
    private static final double STEP_SHARE = 0.5;

    private double older = Double.NaN;
    private double newer = Double.NaN;
    private double newerMin;
    private double outMin;
    private double out;
    private double deviationL;
    private double stepL;
    private double leastL = Double.POSITIVE_INFINITY;
    private int moves;
    private int samples;
    private int oddSamples;

    /** @param startNoiseL noise to start from, L, one standard deviation */
    SpikeGuard(double startNoiseL) {
        this.deviationL = startNoiseL / TO_SD;
    }

    /** Takes a sample; true when {@link #volumeL()} and {@link #tMin()} have a new one. */
    boolean add(double tMin, double volumeL) {
        if (!Double.isNaN(newer) && tMin <= newerMin) {
            return false;
        }
        if (leaveOut(tMin, volumeL)) {
            return false;
        }
        boolean ready = !Double.isNaN(older);
        if (ready) {
            samples++;
            double bend = StrictMath.abs(newer - (older + volumeL) / 2) / 1.2247;
            double gain = StrictMath.max(0.01, 1.0 / (samples + 3));
            deviationL += gain * (StrictMath.min(bend, 4 * deviationL + 0.05) - deviationL);
            step(StrictMath.abs(volumeL - newer));
            out = StrictMath.max(StrictMath.min(older, newer), StrictMath.min(StrictMath.max(older, newer), volumeL));
            outMin = newerMin;
        }
        older = newer;
        newer = volumeL;
        newerMin = tMin;
        return ready;
    }

    /** Counts a sample farther off than water moves, to be left out unless it stays so for {@value #ODD_IN_A_ROW} of them. */
    private boolean leaveOut(double tMin, double volumeL) {
        if (samples < LEAST_SAMPLES || Double.isNaN(newer)) {
            return false;
        }
        double reach = 8 * noiseL() + FASTEST_L_MIN * (tMin - newerMin);
        if (StrictMath.abs(volumeL - newer) <= reach) {
            oddSamples = 0;
            return false;
        }
        if (++oddSamples < ODD_IN_A_ROW) {
            return true;
        }
        gap();
        return false;
    }

    private void step(double move) {
        if (move < 1e-6) {
            return;
        }
        leastL = StrictMath.min(leastL, move);
        stepL = moves == 0 && stepL == 0 ? leastL : StrictMath.min(stepL, leastL);
        moves++;
        if (moves == STEPS) {
            stepL = leastL;
            leastL = Double.POSITIVE_INFINITY;
            moves = 0;
        }
    }

    void gap() {
        older = Double.NaN;
        newer = Double.NaN;
        oddSamples = 0;
    }

    /** Whether the noise is known well enough to judge by. */
    boolean learned() {
        return samples >= LEAST_SAMPLES;
    }

    double tMin() {
        return outMin;
    }

    double volumeL() {
        return out;
    }

    /** Noise of one sample, L, one standard deviation (mean absolute deviation times 1.2533). */
    double noiseL() {
        return StrictMath.max(StrictMath.max(0.2, STEP_SHARE * stepL), deviationL * TO_SD);
    }
}
