package bywash.tui.account;

import java.time.Instant;

/**
 * What one probe read in one slice of time.
 *
 * @param from its beginning
 * @param count readings in it, at least 1
 * @param low in the fixed unit of the probe's quantity, as are mean and high
 */
public record Slice(Instant from, long count, double low, double mean, double high) {}
