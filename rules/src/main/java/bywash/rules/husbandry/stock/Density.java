package bywash.rules.husbandry.stock;

import java.util.Locale;

/**
 * How much fish a tank carries against a guide.
 *
 * @param kgM3 likely, kg of fish per m3 of tank
 * @param highKgM3 upper end of the estimate
 * @param guideKgM3 the guide; infinite where none is known
 */
public record Density(double kgM3, double highKgM3, double guideKgM3, String source) {
    /** @param volumeL of the tank the fish live in (L, above 0) */
    public static Density of(MassEstimate biomass, double volumeL, double guideKgM3, String source) {
        return new Density(biomass.likelyG() / volumeL, biomass.highG() / volumeL, guideKgM3, source);
    }

    public boolean overGuide() {
        return kgM3 > guideKgM3;
    }

    /** In words with its figures. */
    public String words() {
        if (Double.isInfinite(guideKgM3)) {
            return String.format(Locale.ROOT, "%.1f kg/m3, no guide known for the species", kgM3);
        }
        String verdict = overGuide()
                ? "over the guide: harvest, move or hold back feed"
                : highKgM3 > guideKgM3 ? "may be over the guide: weigh" : "within the guide";
        return String.format(Locale.ROOT, "%.1f kg/m3, guide %.0f: %s", kgM3, guideKgM3, verdict);
    }
}
