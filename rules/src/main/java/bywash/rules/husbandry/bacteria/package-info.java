/**
 * The nitrifying bacteria: the load they have been shown to carry, how to keep them alive without fish, and what must hold before
 * fish come back. Nitrogen in g as N, concentrations in mg/L.
 */
@NullMarked
package bywash.rules.husbandry.bacteria;

import org.jspecify.annotations.NullMarked;
