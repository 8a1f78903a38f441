package bywash.rules.chlorine;

import java.time.Instant;

/**
 * One treatment of a batch.
 *
 * @param amountG of the chemical, g; NaN where none was given
 */
public record BatchStep(Instant at, Treatment treatment, double amountG) {}
