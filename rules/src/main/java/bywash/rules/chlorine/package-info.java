/**
 * Residual chlorine in the system: mass balance with a range, and oxidation potential as evidence. Sees site, water, event.
 */
@NullMarked
package bywash.rules.chlorine;

import org.jspecify.annotations.NullMarked;
