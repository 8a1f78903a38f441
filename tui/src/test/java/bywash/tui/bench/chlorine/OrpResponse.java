package bywash.tui.bench.chlorine;

import java.util.SplittableRandom;

/**
 * An oxidation-potential probe that is not the simulated site's own, so that the estimate is not held against one response
 * alone: mV = 310 + day + slope ln(1 + C / 20 ug/L) + per pH, followed with a lag, then noise; or a fault.
 */
final class OrpResponse {
    /** What may be wrong with the probe. */
    enum Fault {
        NONE,
        SILENT,
        FOULED,
        LIFTED,
        PEROXIDE
    }

    private final double slopeMv;
    private final double perPhMv;
    private final double lagMin;
    private final Fault fault;
    private final double faultMin;
    private final SplittableRandom random;
    private double mv = 310;

    OrpResponse(SplittableRandom random, Fault fault, double faultMin) {
        this.random = random;
        this.slopeMv = 30 + 100 * random.nextDouble();
        this.perPhMv = -59 * random.nextDouble();
        this.lagMin = 2 + 5 * random.nextDouble();
        this.fault = fault;
        this.faultMin = faultMin;
    }

    /** Half a minute passes; returns the reading, NaN where none is sent. */
    double read(double tMin, double residualUgL, double phShift) {
        boolean faulty = tMin >= faultMin && tMin < faultMin + 120;
        double seen = fault == Fault.FOULED ? 0.1 * residualUgL : residualUgL;
        double toward = 310 + 6 * Math.sin(2 * Math.PI * tMin / 1440) + slopeMv * Math.log1p(seen / 20);
        toward += perPhMv * phShift;
        if (faulty && fault == Fault.PEROXIDE) {
            toward += 60;
        }
        mv += (toward - mv) * Math.min(1, 0.5 / lagMin);
        double noisy = mv + 1.5 * random.nextGaussian();
        if (faulty && fault == Fault.LIFTED) {
            return noisy + 140;
        }
        return faulty && fault == Fault.SILENT ? Double.NaN : noisy;
    }
}
