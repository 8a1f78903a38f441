/**
 * The season's book: takes what the grower enters and what the probes read, and says how fish, feed, plants, bacteria and probes
 * stand. Sees the other packages of husbandry; no engine, no clock, no files.
 */
@NullMarked
package bywash.rules.husbandry.season;

import org.jspecify.annotations.NullMarked;
