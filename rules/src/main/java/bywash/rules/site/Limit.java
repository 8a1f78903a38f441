package bywash.rules.site;

/** A band that the site file sets for one quantity in one vessel. */
public record Limit(String vessel, Quantity quantity, Band band) {}
