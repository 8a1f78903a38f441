/** Holds the simulation to what physics demands of it. */
@NullMarked
package bywash.samples.simulation;

import org.jspecify.annotations.NullMarked;
