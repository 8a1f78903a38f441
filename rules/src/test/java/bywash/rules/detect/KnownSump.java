package bywash.rules.detect;

import java.util.SplittableRandom;

/** A sump and its siphon beds, second by second, with nothing hidden: drains of two minutes, trips that vary by 4 %. */
final class KnownSump {
    private static final double DRAIN_L_MIN = 38;

    final double[] flowLMin;
    final double[] heldL;
    private final double[] tripL;
    private final double[] nextL;
    private final boolean[] draining;
    private final SplittableRandom random;
    double sumpL = 500;
    double inflowLMin;

    KnownSump(double[] flowLMin, double[] tripL, long seed) {
        this.flowLMin = flowLMin.clone();
        this.tripL = tripL.clone();
        this.nextL = tripL.clone();
        this.heldL = new double[tripL.length];
        this.draining = new boolean[tripL.length];
        this.random = new SplittableRandom(seed);
        for (int i = 0; i < tripL.length; i++) {
            heldL[i] = tripL[i] * random.nextDouble();
        }
    }

    double totalL() {
        double total = sumpL;
        for (double held : heldL) {
            total += held;
        }
        return total;
    }

    /** One second. */
    void step() {
        sumpL += inflowLMin / 60;
        for (int i = 0; i < heldL.length; i++) {
            double in = flowLMin[i] / 60;
            double out = draining[i] ? StrictMath.min(heldL[i] - 2, DRAIN_L_MIN / 60) : 0;
            heldL[i] += in - out;
            sumpL += out - in;
            if (draining[i] && heldL[i] <= 2 + in) {
                draining[i] = false;
                nextL[i] = tripL[i] * (0.96 + 0.08 * random.nextDouble());
            } else if (heldL[i] >= nextL[i]) {
                draining[i] = true;
            }
        }
    }

    /** What a probe of 1.5 mm noise in a square metre says. */
    double readL() {
        double u = 1 - random.nextDouble();
        double noise =
                StrictMath.sqrt(-2 * StrictMath.log(u)) * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
        return sumpL + 1.5 * noise;
    }
}
