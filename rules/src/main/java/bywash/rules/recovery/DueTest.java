package bywash.rules.recovery;

import java.time.Instant;

/**
 * A test on the schedule.
 *
 * @param quantity as in entries, such as {@code total-ammonia}
 * @param dueAt when it is due next
 * @param due whether it is due now
 * @param why in words
 */
public record DueTest(String quantity, Instant dueAt, boolean due, String why) {}
