package bywash.ingest.journal;

import java.time.Instant;

/**
 * One alarm's change as the journal keeps it.
 *
 * @param json the alarm line
 * @param kind the alarm's word
 * @param state what a restart needs to know of the alarm; replaces what was kept of it
 */
public record KeptTransition(Instant at, String json, String kind, String subject, String state) {}
