package bywash.rules.husbandry.feed;

import bywash.rules.site.Need;
import bywash.rules.site.Species;
import bywash.rules.water.Valid;

/**
 * The share of its own mass that a fish is fed in a day.
 *
 * <p>Source: 1 to 2 % at grow-out: FAO Technical Paper 589 (2014), section 7.2, read in a public copy. Under 50 g 2 to 3 %: the same,
 * from memory. Fry under 5 g 5 %: D. El-Saidy and E. Hussein, 2015, Int. J. Aquaculture 5(12), red tilapia of 0.9 g grew best on
 * 5 % of 1, 3, 5 and 7 %. Other species and feeds differ: the label and the appetite decide.
 *
 * @param lowPercent a day
 * @param highPercent a day
 */
public record Ration(double lowPercent, double highPercent) {
    private static final double FRY_G = 5;
    private static final double FINGERLING_G = 50;

    /** @param meanG mean mass of one fish (g, above 0) */
    public static Ration ofMass(double meanG) {
        Valid.positive("meanG", meanG, 1e6, "g");
        if (meanG < FRY_G) {
            return new Ration(4, 5);
        }
        return meanG < FINGERLING_G ? new Ration(2, 3) : new Ration(1, 2);
    }

    /**
     * Share of the ration that a temperature leaves: 1 in the best band, falling straight to 0 at the ends of the band in which
     * the species feeds. The straight line is common practice, no source.
     *
     * @param temperatureC water temperature (Cel)
     * @return 0 to 1; 1 where the species has no band
     */
    public static double temperatureShare(Species species, double temperatureC) {
        double bestLow = species.least(Need.BEST_TEMPERATURE);
        double bestHigh = species.most(Need.BEST_TEMPERATURE);
        Need outer = species.band(Need.FEEDING_TEMPERATURE).isPresent() ? Need.FEEDING_TEMPERATURE : Need.TEMPERATURE;
        if (temperatureC < bestLow) {
            return ramp(temperatureC, species.least(outer), bestLow);
        }
        return temperatureC > bestHigh ? ramp(-temperatureC, -species.most(outer), -bestHigh) : 1;
    }

    private static double ramp(double value, double zero, double one) {
        if (Double.isInfinite(zero) || zero >= one) {
            return 1;
        }
        return Math.max(0, Math.min(1, (value - zero) / (one - zero)));
    }
}
