package bywash.rules.chlorine;

import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.water.FirstOrderLoss;
import bywash.rules.water.LossRate;

/**
 * Total residual chlorine of one water, as a range.
 *
 * @param lowMgL low end, mg/L as Cl2, 0 to 20
 * @param likelyMgL best single value, mg/L
 * @param highMgL high end, mg/L
 */
public record Residual(double lowMgL, double likelyMgL, double highMgL) {
    /** No residual at all. */
    public static final Residual ZERO = new Residual(0, 0, 0);

    private static final double MOST_MG_L = 20;
    private static final double LONGEST_H = 10_000;

    /** Share of the stated residual of a supply at the low and the high end; common practice, no source. */
    private static final double MAINS_LOW = 0.5;

    private static final double MAINS_HIGH = 1.5;
    private static final double OTHER_LOW = 0.001;
    private static final double OTHER_LIKELY = 0.1;

    public Residual {
        if (!(lowMgL >= 0 && lowMgL <= likelyMgL && likelyMgL <= highMgL && highMgL <= MOST_MG_L)) {
            throw new IllegalArgumentException("residual " + lowMgL + ", " + likelyMgL + ", " + highMgL
                    + " mg/L must rise, from 0 to " + MOST_MG_L);
        }
    }

    /** A range put in order and held between 0 and 20 mg/L. */
    static Residual between(double lowMgL, double likelyMgL, double highMgL) {
        double low = clamp(StrictMath.min(lowMgL, likelyMgL));
        double high = clamp(StrictMath.max(highMgL, likelyMgL));
        return new Residual(low, clamp(likelyMgL), high);
    }

    private static double clamp(double mgL) {
        return StrictMath.max(0, StrictMath.min(MOST_MG_L, mgL));
    }

    /** Mains water straight from the tap: half to one and a half times the stated residual. */
    public static Residual ofMains(Mains mains) {
        if (mains.disinfectant() == Disinfectant.NONE) {
            return ZERO;
        }
        double stated = mains.residualMgL();
        return between(MAINS_LOW * stated, stated, MAINS_HIGH * stated);
    }

    /** Water whose source is not known: counts as mains, but may have none (rain). */
    public static Residual ofUnknownSource(Mains mains) {
        Residual tap = ofMains(mains);
        return new Residual(0, tap.likelyMgL, tap.highMgL);
    }

    /**
     * Water that does not come straight from the tap: rain, or water that has stood. It may carry nothing to speak of or as much as
     * the mains, most likely a tenth; assumed.
     */
    static Residual ofOtherWater(Mains mains) {
        double stated = mains.disinfectant() == Disinfectant.NONE ? 0 : mains.residualMgL();
        return between(stated * OTHER_LOW, stated * OTHER_LIKELY, stated);
    }

    /** What is left after a time (h): the low end with the high rate of loss, the high end with the low one. */
    Residual after(LossRate rate, double hours) {
        double h = StrictMath.max(0, StrictMath.min(LONGEST_H, hours));
        return between(
                FirstOrderLoss.after(lowMgL, rate.highPerHour(), h),
                FirstOrderLoss.after(likelyMgL, rate.likelyPerHour(), h),
                FirstOrderLoss.after(highMgL, rate.lowPerHour(), h));
    }

    /**
     * This water mixed with another, by mass balance.
     *
     * @param held litres of this water
     * @param in the other water
     * @param inL litres of it
     */
    Residual mixedWith(Litres held, Residual in, double inL) {
        if (!(inL > 0)) {
            return this;
        }
        double low =
                StrictMath.min(mix(lowMgL, held.lowL(), in.lowMgL, inL), mix(lowMgL, held.highL(), in.lowMgL, inL));
        double high =
                StrictMath.max(mix(highMgL, held.lowL(), in.highMgL, inL), mix(highMgL, held.highL(), in.highMgL, inL));
        return between(low, mix(likelyMgL, held.likelyL(), in.likelyMgL, inL), high);
    }

    private static double mix(double mgL, double heldL, double inMgL, double inL) {
        return (mgL * heldL + inMgL * inL) / (heldL + inL);
    }
}
