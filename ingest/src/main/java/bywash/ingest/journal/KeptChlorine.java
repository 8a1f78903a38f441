package bywash.ingest.journal;

import java.time.Instant;

/** What was known of chlorine at a time, as the journal keeps it. */
public record KeptChlorine(Instant at, String json) {}
