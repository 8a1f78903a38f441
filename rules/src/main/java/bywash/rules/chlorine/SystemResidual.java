package bywash.rules.chlorine;

/**
 * Total residual chlorine in the mixed system water, as three bounds carried by mass balance: dC/dt = q Cin / V - k C,
 * stepwise with the exact solution of each step. Masses in mg, k per hour.
 *
 * <p>The decay range is wide on purpose: 0.03 per hour is the bulk demand of clean drinking water (US EPA drinking
 * water model, 2 mg/L, 20 Cel), 2 per hour stands for water full of fish, feed and biofilm (from memory: literature
 * 0.02 to 0.74 per hour in pipes; walls and biofilm add to it).
 */
public final class SystemResidual {
    private static final double K_SLOW = 0.03;
    private static final double K_LIKELY = 0.3;
    private static final double K_FAST = 2.0;

    private double lowMg;
    private double likelyMg;
    private double highMg;

    /** Time passes. */
    public void decay(double hours) {
        lowMg *= StrictMath.exp(-K_FAST * hours);
        likelyMg *= StrictMath.exp(-K_LIKELY * hours);
        highMg *= StrictMath.exp(-K_SLOW * hours);
    }

    /** Water came in; each bound has its own litres and mg/L, as range of what is not known. */
    public void inflow(double lowMassMg, double likelyMassMg, double highMassMg) {
        lowMg += lowMassMg;
        likelyMg += likelyMassMg;
        highMg += highMassMg;
    }

    /** A test of the system water replaces the estimate, within its resolution. */
    public void tested(double totalChlorineMgL, double systemL) {
        lowMg = StrictMath.max(0, totalChlorineMgL - ReserveBatch.ZERO_MG_L) * systemL;
        likelyMg = totalChlorineMgL * systemL;
        highMg = (totalChlorineMgL + ReserveBatch.ZERO_MG_L) * systemL;
    }

    public double lowUgL(double systemL) {
        return lowMg / systemL * 1000;
    }

    public double likelyUgL(double systemL) {
        return likelyMg / systemL * 1000;
    }

    public double highUgL(double systemL) {
        return highMg / systemL * 1000;
    }
}
