/**
 * The probes' book: calibrations with slope and offset, drift, disagreement with manual tests, when care is due, and whether a
 * reading may be believed. Values in the fixed unit of the probe's quantity. Sees the site, the entries and the formulas.
 */
@NullMarked
package bywash.rules.husbandry.probes;

import org.jspecify.annotations.NullMarked;
