/**
 * The fish on record: cohorts, weighings, growth, feed conversion, density and harvest. Masses in g, densities in kg/m3,
 * temperatures in Cel. Sees the site, the entries and the formulas of the water; no engine, no clock, no files.
 */
@NullMarked
package bywash.rules.husbandry.stock;

import org.jspecify.annotations.NullMarked;
