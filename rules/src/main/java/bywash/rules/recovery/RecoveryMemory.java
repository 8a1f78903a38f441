package bywash.rules.recovery;

import java.time.Instant;

/**
 * How far the way back from an incident has come: what the tests and meals on record do not tell.
 *
 * @param incident that it comes back from
 * @param began when that began
 * @param since when this stage of feeding began
 */
public record RecoveryMemory(String incident, Instant began, FeedStage feed, Instant since) {}
