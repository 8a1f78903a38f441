package bywash.rules.recovery;

import bywash.rules.water.AmmoniaCriteria;
import bywash.rules.water.UnionisedAmmonia;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A total-ammonia test judged at the pH and temperature of the water.
 *
 * <p>Limits: 0.05 mg/L un-ionised as N, from which gills are damaged (R. Francis-Floyd and others, University of Florida IFAS
 * publication FA-16, from memory); the chronic criterion for total ammonia with mussels absent and young fish present, and the
 * acute one with mussels and trout absent (US EPA, 2013, EPA-822-R-13-001). The criteria hold for pH 6.5 to 9 and 0 to 30 Cel;
 * outside, the nearer end is used.
 *
 * @param tanMgL total ammonia, mg/L as N
 * @param ph pH it is judged at
 * @param temperatureC temperature it is judged at, Cel
 * @param measured whether pH and temperature are those of the water, or assumed on the safe side
 */
public record AmmoniaLevel(double tanMgL, double ph, double temperatureC, boolean measured) {
    /** Un-ionised ammonia from which gills are damaged, mg/L as N. */
    public static final double DAMAGE_MG_L = 0.05;

    /** pH that is assumed where the water's own is not known: on the toxic side of usual fish water, common practice. */
    public static final double ASSUMED_PH = 8.0;

    /** Temperature that is assumed where the water's own is not known, Cel: on the toxic side of usual fish water, common practice. */
    public static final double ASSUMED_C = 28;

    public AmmoniaLevel {
        if (!(tanMgL >= 0 && tanMgL <= 1000)) {
            throw new IllegalArgumentException("tanMgL is " + tanMgL + "; it must be from 0 to 1000 mg/L");
        }
        ph = clamp(ph, 4, 11);
        temperatureC = clamp(temperatureC, 0, 40);
    }

    private static double clamp(double value, double low, double high) {
        return StrictMath.max(low, StrictMath.min(high, value));
    }

    /** Judged at what is known; NaN where it is not. */
    public static AmmoniaLevel at(double tanMgL, double ph, double temperatureC) {
        boolean known = !Double.isNaN(ph) && !Double.isNaN(temperatureC);
        return new AmmoniaLevel(
                tanMgL,
                Double.isNaN(ph) ? ASSUMED_PH : ph,
                Double.isNaN(temperatureC) ? ASSUMED_C : temperatureC,
                known);
    }

    /** Un-ionised ammonia, mg/L as N. */
    public double unionisedMgL() {
        return UnionisedAmmonia.unionisedMgL(tanMgL, ph, temperatureC);
    }

    /** Chronic criterion for total ammonia here, mg/L as N. */
    public double chronicMgL() {
        return AmmoniaCriteria.chronicWithoutMussels(clamp(ph, 6.5, 9), clamp(temperatureC, 0, 30), true);
    }

    /** Acute criterion for total ammonia here, mg/L as N. */
    public double acuteMgL() {
        return AmmoniaCriteria.acuteWithoutMusselsOrTrout(clamp(ph, 6.5, 9), clamp(temperatureC, 0, 30));
    }

    /** Whether any limit is passed. */
    public boolean toxic() {
        return !passed().isEmpty();
    }

    /** The general limits that are passed, each with its source; empty where none is. */
    public List<String> passed() {
        return passed(DAMAGE_MG_L, "IFAS FA-16");
    }

    /**
     * The limits that are passed, each with its source; empty where none is.
     *
     * @param unionisedMostMgL the limit of un-ionised ammonia that counts, mg/L as N
     * @param whose whose limit that is, with its source
     */
    public List<String> passed(double unionisedMostMgL, String whose) {
        List<String> passed = new ArrayList<>();
        if (unionisedMgL() > unionisedMostMgL) {
            passed.add("un-ionised above "
                    + String.format(Locale.ROOT, "%.3f", unionisedMostMgL).replaceFirst("0$", "") + " mg/L (" + whose
                    + ")");
        }
        if (tanMgL > acuteMgL()) {
            passed.add(String.format(Locale.ROOT, "total above the acute %.1f mg/L (US EPA 2013)", acuteMgL()));
        } else if (tanMgL > chronicMgL()) {
            passed.add(String.format(Locale.ROOT, "total above the chronic %.1f mg/L (US EPA 2013)", chronicMgL()));
        }
        return passed;
    }

    /** One line on what it was judged at. */
    public String basis() {
        return String.format(
                Locale.ROOT,
                "At pH %.1f and %.0f C %.2f mg/L of total ammonia has %.3f mg/L un-ionised%s.",
                ph,
                temperatureC,
                tanMgL,
                unionisedMgL(),
                measured ? "" : "; pH or temperature is not known and is assumed on the safe side");
    }
}
