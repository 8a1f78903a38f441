package bywash.ingest.journal;

import java.time.Instant;

/**
 * One minute of one probe, kept when the messages themselves have been pruned.
 *
 * @param minute its beginning
 * @param count readings in it
 * @param mean in the probe's unit, as are low and high
 */
public record Rollup(String probe, Instant minute, int count, double mean, double low, double high) {}
