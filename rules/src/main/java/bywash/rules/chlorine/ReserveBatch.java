package bywash.rules.chlorine;

import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What stands in one reserve: its residual as a range in mg/L, and whether a test has shown it safe. Without a known
 * filling it counts as mains water.
 *
 * <p>Loss while standing is first order. No citable rate was found for open vessels; the range 0.01 to 0.2 per hour
 * for chlorine (half-life 3.5 h to 3 days) brackets common practice of about two days, and 0 to 0.005 per hour for
 * chloramine brackets the dark-water model decay of 2 mg/L to 1.57-1.88 mg/L in 7 days (US EPA drinking-water model).
 */
public final class ReserveBatch {
    /** A total-chlorine test at or under this counts as zero, mg/L: the resolution of a DPD kit. */
    public static final double ZERO_MG_L = 0.02;

    private static final double MAINS_HIGH = 1.5;

    private final Mains mains;
    private @Nullable Instant asOf;
    private double lowMgL;
    private double highMgL;
    private boolean testedZero;

    public ReserveBatch(Mains mains) {
        this.mains = mains;
        this.lowMgL = 0;
        this.highMgL = mains.residualMgL() * MAINS_HIGH;
    }

    /** New mains water came in: the whole batch counts as mains from here on the safe side. */
    public void filled(Instant at) {
        asOf = at;
        lowMgL = 0;
        highMgL = mains.residualMgL() * MAINS_HIGH;
        testedZero = false;
    }

    /** A total-chlorine test of the reserve, mg/L. */
    public void tested(Instant at, double totalChlorineMgL) {
        asOf = at;
        lowMgL = StrictMath.max(0, totalChlorineMgL - ZERO_MG_L);
        highMgL = totalChlorineMgL + ZERO_MG_L;
        testedZero = totalChlorineMgL <= ZERO_MG_L;
    }

    /** Whether a test has shown it free of chlorine since the last filling, or the mains carries none. */
    public boolean knownSafe() {
        return testedZero || mains.disinfectant() == Disinfectant.NONE;
    }

    public double lowMgL(Instant at) {
        return lowMgL * left(at, mains.disinfectant() == Disinfectant.CHLORAMINE ? 0.005 : 0.2);
    }

    public double highMgL(Instant at) {
        return highMgL * left(at, mains.disinfectant() == Disinfectant.CHLORAMINE ? 0 : 0.01);
    }

    /** Words on what is known. */
    public String words(Instant at) {
        if (mains.disinfectant() == Disinfectant.NONE) {
            return "the mains carries no disinfectant";
        }
        if (testedZero) {
            return "tested free of chlorine";
        }
        if (asOf == null) {
            return "no filling or test on record: counts as mains water";
        }
        long hours = Duration.between(asOf, at).toHours();
        return "not tested since it was filled " + hours + " h ago";
    }

    private double left(Instant at, double perHour) {
        if (asOf == null || mains.disinfectant() == Disinfectant.NONE) {
            return mains.disinfectant() == Disinfectant.NONE ? 0 : 1;
        }
        return StrictMath.exp(-perHour * Duration.between(asOf, at).toMillis() / 3_600_000.0);
    }
}
