/**
 * Vessel geometry. Sees nothing else.
 */
@NullMarked
package bywash.rules.vessel;

import org.jspecify.annotations.NullMarked;
