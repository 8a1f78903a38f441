package bywash.rules.detect;

/** Median of three: a single spike never gets through; delays by one sample. Also estimates the noise. */
final class SpikeGuard {
    private static final double TO_SD = 1.4826;

    private double older = Double.NaN;
    private double newer = Double.NaN;
    private double newerMin;
    private double outMin;
    private double out;
    private double deviationL;

    /** @param startNoiseL noise to start from, L, one standard deviation */
    SpikeGuard(double startNoiseL) {
        this.deviationL = startNoiseL / TO_SD;
    }

    /** Takes a sample; true when {@link #volumeL()} and {@link #tMin()} have a new one. */
    boolean add(double tMin, double volumeL) {
        if (!Double.isNaN(newer) && tMin <= newerMin) {
            return false;
        }
        boolean ready = !Double.isNaN(older);
        if (ready) {
            double bend = StrictMath.abs(newer - (older + volumeL) / 2) / 1.2247;
            deviationL += 0.01 * (StrictMath.min(bend, 6 * deviationL + 0.05) - deviationL);
            out = StrictMath.max(StrictMath.min(older, newer), StrictMath.min(StrictMath.max(older, newer), volumeL));
            outMin = newerMin;
        }
        older = newer;
        newer = volumeL;
        newerMin = tMin;
        return ready;
    }

    void gap() {
        older = Double.NaN;
        newer = Double.NaN;
    }

    double tMin() {
        return outMin;
    }

    double volumeL() {
        return out;
    }

    /** Noise of one sample, L, one standard deviation (mean absolute deviation times 1.2533). */
    double noiseL() {
        return StrictMath.max(0.2, deviationL * 1.2533);
    }
}
