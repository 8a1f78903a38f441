package bywash.rules.water;

import java.util.Locale;
import java.util.Map;

/**
 * How strong a product is that bears a chemical's name: pure chemical by weight, %. The label decides; where nobody read it the
 * usual one is taken. What is not named here is a dry chemical, sold nearly pure.
 *
 * <p>Usual strengths and the strongest that are sold are trade practice, from memory; no source.
 */
public final class LabelStrength {
    /** @param usual as mostly sold to growers; @param most the strongest that is sold */
    private record Sold(double usual, double most) {}

    private static final Sold DRY = new Sold(100, 100);

    private static final Map<String, Sold> SOLD = Map.of(
            "hydrochloric-acid", new Sold(31, 38),
            "nitric-acid", new Sold(38, 70),
            "phosphoric-acid", new Sold(85, 100),
            "sulfuric-acid", new Sold(37, 98),
            "potassium-hydroxide", new Sold(90, 100),
            "ammonia-solution", new Sold(9.5, 35));

    private LabelStrength() {}

    private static Sold sold(String reagent) {
        return SOLD.getOrDefault(reagent, DRY);
    }

    /** Taken where the label was not read (%). */
    public static double usualPercent(String reagent) {
        return sold(reagent).usual();
    }

    /** The strength of the label, or the usual one where that is NaN (%). */
    public static double percent(String reagent, double label) {
        return Double.isNaN(label) ? usualPercent(reagent) : label;
    }

    /** Why a strength cannot stand on the label of a chemical, with what would be right; empty where it can. */
    public static String problem(String reagent, double percent) {
        double most = sold(reagent).most();
        if (percent > 0 && percent <= most) {
            return "";
        }
        return "strength " + (Double.isFinite(percent) ? plain(percent) + " % " : "") + "is not one of "
                + reagent.replace('-', ' ') + "; give the percent by weight on the label, above 0 to " + plain(most);
    }

    private static String plain(double percent) {
        return percent == StrictMath.rint(percent)
                ? String.valueOf(Math.round(percent))
                : String.format(Locale.ROOT, "%.1f", percent);
    }

    /** Such as {@code 85 %}. */
    public static String words(double percent) {
        return plain(percent) + " %";
    }
}
