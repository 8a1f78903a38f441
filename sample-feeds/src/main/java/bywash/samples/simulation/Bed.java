package bywash.samples.simulation;

import java.util.SplittableRandom;

/** One grow bed on an automatic siphon: fills, trips at a jittered volume, drains faster while deep. L and L/min. */
final class Bed {
    private static final double RESIDUE_L = 2;

    /** No trip is farther from the usual than this many spreads: the standpipe bounds it. */
    private static final double MOST = 2.5;

    private final double fillLMin;
    private final double tripL;
    private final double jitter;
    private final double drainLMin;
    private double heldL;
    private double nextTripL;
    private double residueL = RESIDUE_L;
    private boolean draining;

    private Bed(double fillLMin, double tripL, double jitter, double drainLMin, double startShare) {
        this.fillLMin = fillLMin;
        this.tripL = tripL;
        this.jitter = jitter;
        this.drainLMin = drainLMin;
        this.heldL = tripL * startShare;
        this.nextTripL = tripL;
    }

    /** Bed {@code index} of the model; what varies from bed to bed is drawn here. */
    static Bed of(BedModel model, int index, SplittableRandom random) {
        if (model.varied()) {
            double trip = 60 + 35 * random.nextDouble();
            double fill = trip / (model.fillMin() * (0.8 + 0.4 * random.nextDouble()));
            double drain = trip / (1.5 + 2 * random.nextDouble());
            return new Bed(fill, trip, model.jitter(), drain, random.nextDouble());
        }
        double trip = 62 + 31.0 * index / StrictMath.max(1, model.count() - 1);
        double fill = trip / (model.fillMin() * (0.85 + 0.17 * index));
        return new Bed(fill, trip, model.jitter(), 26 + 3 * index, random.nextDouble());
    }

    double heldL() {
        return heldL;
    }

    /** One step at a share of the full flow, 0 when the pump stands; returns litres given to the sump. */
    double step(double minutes, double flowShare, SplittableRandom random) {
        double in = fillLMin * flowShare * minutes;
        double out = 0;
        if (draining) {
            double depth = StrictMath.max(0.05, heldL / tripL);
            double flow = drainLMin * (0.6 + 0.6 * StrictMath.sqrt(depth)) * minutes + in;
            out = StrictMath.max(0, StrictMath.min(heldL - residueL, flow));
            if (heldL - out <= residueL + 0.01) {
                draining = false;
                nextTripL = tripL * (1 + jitter * StrictMath.max(-MOST, StrictMath.min(MOST, Gaussian.next(random))));
                residueL = RESIDUE_L + 0.5 * StrictMath.abs(Gaussian.next(random));
            }
        } else if (heldL >= nextTripL) {
            draining = true;
        }
        heldL += in - out;
        return out - in;
    }
}
