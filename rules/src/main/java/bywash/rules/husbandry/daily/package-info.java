/**
 * The water day by day: for each probe the lowest, mean and highest of each local day, and the manual tests. Bounded in memory:
 * about two years. Units as the quantities'. Sees the site and the entries only.
 */
@NullMarked
package bywash.rules.husbandry.daily;

import org.jspecify.annotations.NullMarked;
