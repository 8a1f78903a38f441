package bywash.rules.site;

/**
 * One figure of a species.
 *
 * @param band in the unit of the need; either end may be infinite
 * @param source where it comes from, and whether it is from memory
 */
public record SpeciesBand(Need need, Band band, String source) {}
