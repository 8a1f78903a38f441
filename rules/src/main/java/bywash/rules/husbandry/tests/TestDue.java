package bywash.rules.husbandry.tests;

import bywash.rules.event.OperatorEntry.WaterTest;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One test on the schedule.
 *
 * @param quantity as in entries, such as {@code total-ammonia}
 * @param last the latest of the water in the loop; null where none is on record
 * @param dueAt when the next is due
 * @param why how often and for what reason, in words
 */
public record TestDue(String quantity, @Nullable WaterTest last, Instant dueAt, String why) {
    public boolean due(Instant now) {
        return !now.isBefore(dueAt);
    }
}
