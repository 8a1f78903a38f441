package bywash.rules.husbandry.ph;

import bywash.rules.water.CarbonateWater;
import bywash.rules.water.Valid;

/**
 * Two waters poured together, closed to air: alkalinity, inorganic carbon and heat are shared out by volume, and the pH follows.
 *
 * <p>Source: alkalinity and total carbon are conservative on mixing, W. Stumm and J. J. Morgan, 1996, Aquatic Chemistry, 3rd ed., ch. 4.
 */
public final class MixedWater {
    private static final int HALVINGS = 60;

    private MixedWater() {}

    /**
     * The mixture.
     *
     * @param share of the second water in it (0 to 1)
     */
    public static CarbonateWater of(CarbonateWater first, CarbonateWater second, double share) {
        Valid.within("share", share, 0, 1, "");
        double temperature = mean(first.temperatureC(), second.temperatureC(), share);
        double carbon = mean(first.totalCarbonMmolL(), second.totalCarbonMmolL(), share);
        double alkalinity = mean(first.alkalinityMgL(), second.alkalinityMgL(), share);
        double low = 4;
        double high = 11;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (new CarbonateWater(temperature, middle, carbon).alkalinityMgL() < alkalinity) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return new CarbonateWater(temperature, (low + high) / 2, carbon);
    }

    private static double mean(double a, double b, double share) {
        return a + (b - a) * share;
    }
}
