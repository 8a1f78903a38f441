/**
 * Beds and crops: what is planted where, the nitrogen that plants take and that a harvest carries off, and whether there is enough.
 * Areas in m2, nitrogen in g as N, nitrate in mg/L as NO3 as most kits give it.
 */
@NullMarked
package bywash.rules.husbandry.plants;

import org.jspecify.annotations.NullMarked;
