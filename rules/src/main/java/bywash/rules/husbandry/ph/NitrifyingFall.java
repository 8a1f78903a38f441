package bywash.rules.husbandry.ph;

import bywash.rules.water.CarbonateWater;

/**
 * How far nitrifying must use up the alkalinity before the water is at a lower pH, and how long that takes.
 *
 * <p>Between two bounds: with all carbon dioxide kept in the water (closed to air: little alkalinity has to go), and with air that
 * holds the carbon dioxide where it is now (much has to go: alkalinity and h are then in proportion). Alkalinity taken by
 * nitrifying: {@link bywash.rules.water.Nitrification}.
 *
 * <p>Source: charge balance, W. Stumm and J. J. Morgan, 1996, Aquatic Chemistry, 3rd ed., ch. 4.
 *
 * @param closedMgL alkalinity at the target, closed to air, mg/L as CaCO3
 * @param openMgL the same with carbon dioxide held where it is now
 * @param leastDays d; NaN where the rate is not known
 * @param mostDays d; NaN where the rate is not known
 */
public record NitrifyingFall(double closedMgL, double openMgL, double leastDays, double mostDays) {
    /**
     * Works it out.
     *
     * @param perDay alkalinity taken, mg/L a day, below zero; NaN where not known
     * @throws IllegalArgumentException where the target is no lower pH
     */
    public static NitrifyingFall of(CarbonateWater water, double targetPh, double perDay) {
        if (!(targetPh < water.ph())) {
            throw new IllegalArgumentException(
                    "targetPh is " + targetPh + "; nitrification only lowers the pH, which is " + water.ph());
        }
        double closed = new CarbonateWater(water.temperatureC(), targetPh, water.totalCarbonMmolL()).alkalinityMgL();
        double perCarbon = new CarbonateWater(water.temperatureC(), targetPh, 1).co2MgL();
        double open = new CarbonateWater(water.temperatureC(), targetPh, water.co2MgL() / perCarbon).alkalinityMgL();
        double now = water.alkalinityMgL();
        return new NitrifyingFall(closed, open, (now - closed) / -perDay, (now - open) / -perDay);
    }

    /** Whether the days are known. */
    public boolean timed() {
        return Double.isFinite(leastDays) && Double.isFinite(mostDays);
    }
}
