package bywash.rules.husbandry.stock;

import java.time.Instant;

/**
 * What happened between two weighings.
 *
 * @param growth of the mean; harvest of larger or smaller fish is taken out of it
 * @param conversion feed against gain
 * @param halfWidthPercentPerDay half width of the 95 % range of the specific growth rate; NaN where a spread is not known
 */
public record GrowthPeriod(
        Instant from, Instant to, Growth growth, FeedConversion conversion, double halfWidthPercentPerDay) {}
