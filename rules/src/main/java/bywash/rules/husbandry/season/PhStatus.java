package bywash.rules.husbandry.season;

import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.husbandry.ph.PhPlan;
import org.jspecify.annotations.Nullable;

/**
 * The pH and what will become of it.
 *
 * @param ph mean of the last day; NaN where not known
 * @param alkalinityMgL latest test, mg/L as CaCO3; NaN where none in two weeks
 * @param alkalinityPerDay what nitrifying the feed takes, mg/L a day, below zero; NaN where no feed is on record
 * @param aim what the grower chose; null where nothing
 * @param plan steps to the aim; null where none is needed or it cannot be worked out
 * @param words how it stands, and why there is no plan where there is none
 */
public record PhStatus(
        double ph,
        double alkalinityMgL,
        double alkalinityPerDay,
        @Nullable PhAim aim,
        @Nullable PhPlan plan,
        String words) {
    /** Worked out so far, with other words. */
    PhStatus with(@Nullable PhPlan newPlan, String newWords) {
        return new PhStatus(ph, alkalinityMgL, alkalinityPerDay, aim, newPlan, newWords);
    }
}
