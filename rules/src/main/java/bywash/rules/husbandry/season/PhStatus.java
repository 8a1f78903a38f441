package bywash.rules.husbandry.season;

import bywash.rules.husbandry.ph.PhPlan;
import org.jspecify.annotations.Nullable;

/**
 * The pH and what will become of it.
 *
 * @param ph mean of the last day; NaN where not known
 * @param alkalinityMgL latest test, mg/L as CaCO3; NaN where none in two weeks
 * @param alkalinityPerDay what nitrifying the feed takes, mg/L a day, below zero; NaN where no feed is on record
 * @param plan steps to the aim; null where none is needed or it cannot be worked out
 * @param words how it stands, and why there is no plan where there is none
 */
public record PhStatus(
        double ph,
        double alkalinityMgL,
        double alkalinityPerDay,
        @Nullable PhPlan plan,
        String words) {}
