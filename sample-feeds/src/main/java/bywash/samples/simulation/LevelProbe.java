package bywash.samples.simulation;

import java.util.SplittableRandom;

/** Turns a true level into what a probe says: noise, steps, drift, spikes, losses, doubles. */
final class LevelProbe {
    private static final double SPIKE_MM = 400;

    private final ProbeModel model;
    private final double driftMmPerDay;
    private final SplittableRandom random;
    private double stuckMm = Double.NaN;

    LevelProbe(ProbeModel model, double driftMmPerDay, SplittableRandom random) {
        this.model = model;
        this.driftMmPerDay = driftMmPerDay;
        this.random = random;
    }

    /** What happens to one sample. */
    enum Fate {
        SENT,
        LOST,
        TWICE
    }

    Fate fate() {
        if (model.mishaps() == 0) {
            return Fate.SENT;
        }
        double luck = random.nextDouble();
        return luck < model.mishaps() ? Fate.LOST : luck < 2 * model.mishaps() ? Fate.TWICE : Fate.SENT;
    }

    /** The reading, mm, never under 0. */
    double read(double trueMm, long second, boolean stuck) {
        if (stuck && !Double.isNaN(stuckMm)) {
            return stuckMm;
        }
        double mm = trueMm + driftMmPerDay * second / 86_400 + model.noiseMm() * Gaussian.next(random);
        if (model.mishaps() > 0 && random.nextDouble() < model.mishaps()) {
            mm += SPIKE_MM * random.nextDouble();
        }
        double stepped = StrictMath.rint(mm / model.quantumMm()) * model.quantumMm();
        stuckMm = stuck ? stepped : Double.NaN;
        return StrictMath.max(0, stepped);
    }
}
