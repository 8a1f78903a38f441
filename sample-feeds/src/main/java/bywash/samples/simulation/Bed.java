package bywash.samples.simulation;

import java.util.SplittableRandom;

/** One grow bed on an automatic siphon. Volumes L, flows L/min. */
final class Bed {
    private final double fillLMin;
    private final double tripL;
    private final double jitter;
    private final double drainLMin;
    private double heldL;
    private double nextTripL;
    private double residueL = 2;
    private boolean draining;

    Bed(double fillLMin, double tripL, double jitter, double drainLMin, double startShare) {
        this.fillLMin = fillLMin;
        this.tripL = tripL;
        this.jitter = jitter;
        this.drainLMin = drainLMin;
        this.heldL = tripL * startShare;
        this.nextTripL = tripL;
    }

    double heldL() {
        return heldL;
    }

    /** One step; returns litres given to the sump (negative: taken from it). */
    double step(double minutes, boolean pumpOn, SplittableRandom random) {
        double in = pumpOn ? fillLMin * minutes : 0;
        double out = 0;
        if (draining) {
            double share = Math.max(0.05, heldL / tripL);
            out = Math.min(heldL - residueL, drainLMin * (0.6 + 0.6 * Math.sqrt(share)) * minutes + in);
            if (heldL - out <= residueL + 0.01) {
                draining = false;
                nextTripL = tripL * (1 + jitter * random.nextGaussian());
                residueL = 2 + 0.5 * Math.abs(random.nextGaussian());
            }
        } else if (heldL >= nextTripL) {
            draining = true;
        }
        out = Math.max(0, out);
        heldL += in - out;
        return out - in;
    }
}
