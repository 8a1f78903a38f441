package bywash.rules.husbandry.ph;

import bywash.rules.site.Mains;
import bywash.rules.water.CarbonateWater;

/**
 * The water whose pH is to be moved.
 *
 * @param water as it is now
 * @param volumeL of the loop (L, above 0)
 * @param fish whether there are fish in it
 * @param alkalinityPerDay what nitrifying the feed takes, mg/L as CaCO3 a day, below zero; NaN where no feed is on record
 * @param mains what would be topped up with
 */
public record Loop(CarbonateWater water, double volumeL, boolean fish, double alkalinityPerDay, Mains mains) {
    /** Largest step in a day with fish: changes of 0.3 in 12 to 24 h are hard on them (see {@link PhPlan}). */
    public static final double STEP_WITH_FISH = 0.2;

    /** Without fish; the bacteria and the roots bear more. Common practice, no source. */
    public static final double STEP_WITHOUT_FISH = 0.5;

    /** Largest step in a day. */
    public double largestStep() {
        return fish ? STEP_WITH_FISH : STEP_WITHOUT_FISH;
    }
}
