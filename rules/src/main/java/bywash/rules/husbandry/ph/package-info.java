/**
 * Moving the pH of the loop over days, and what mains water does to it. Alkalinity in mg/L as CaCO3, pH without unit. Builds on the
 * carbonate chemistry of {@code rules.water}.
 */
@NullMarked
package bywash.rules.husbandry.ph;

import org.jspecify.annotations.NullMarked;
