package bywash.samples.simulation;

import java.util.SplittableRandom;

/** Normal deviates by the polar form of Box and Muller (1958), in StrictMath: the same bits on every machine. */
final class Gaussian {
    private Gaussian() {}

    /** One deviate of mean 0 and standard deviation 1. */
    static double next(SplittableRandom random) {
        double u = 1 - random.nextDouble();
        return StrictMath.sqrt(-2 * StrictMath.log(u)) * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
    }
}
