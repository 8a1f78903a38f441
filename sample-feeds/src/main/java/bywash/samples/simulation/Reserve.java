package bywash.samples.simulation;

/** The reserve: upright, spills at its overflow, its residual mixed at once and lost slowly. */
final class Reserve {
    static final double AREA_M2 = StrictMath.PI * 0.55 * 0.55;
    private static final double FULL_L = 1100 * AREA_M2;
    private static final double DECAY_PER_H = 0.03;

    private double volumeL = 700;
    private double chlorineMg;

    double volumeL() {
        return volumeL;
    }

    double residualMgL() {
        return volumeL > 0 ? chlorineMg / volumeL : 0;
    }

    /** Takes mains water; returns what spills, L. */
    double fill(double litres, double chlorineMgL) {
        volumeL += litres;
        chlorineMg += litres * chlorineMgL;
        double spill = StrictMath.max(0, volumeL - FULL_L);
        chlorineMg -= spill * residualMgL();
        volumeL -= spill;
        return spill;
    }

    /** Gives what it has of {@code wantedL}, with its chlorine. */
    double release(double wantedL) {
        double litres = StrictMath.min(volumeL, wantedL);
        chlorineMg -= litres * residualMgL();
        volumeL -= litres;
        return litres;
    }

    void step(double minutes) {
        chlorineMg *= StrictMath.exp(-DECAY_PER_H * minutes / 60);
    }
}
