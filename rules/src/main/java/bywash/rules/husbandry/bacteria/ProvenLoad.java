package bywash.rules.husbandry.bacteria;

import java.time.Instant;

/**
 * A load of ammonia nitrogen that the bacteria were shown to carry: tests of ammonia and nitrite were low under it.
 *
 * @param tanGPerDay g/d
 * @param temperatureC of the water then (Cel); NaN where not known
 */
public record ProvenLoad(double tanGPerDay, double temperatureC, Instant at) {
    /**
     * Share by which nitrification changes a degree, near 20 Cel, while ammonia limits it: S. Zhu and S. Chen, 2002, The impact of
     * temperature on nitrification rate in fixed film biofilters, Aquacultural Engineering 26:221-237, abstract read.
     */
    public static final double SHARE_PER_DEGREE = 0.04275;

    /** What that is worth at another temperature (Cel), g/d; unchanged where either is not known. */
    public double at(double otherC) {
        double degrees = otherC - temperatureC;
        return Double.isNaN(degrees) ? tanGPerDay : tanGPerDay * StrictMath.exp(SHARE_PER_DEGREE * degrees);
    }
}
