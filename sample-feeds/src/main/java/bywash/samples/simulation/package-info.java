/**
 * The invented site as a simulation: water, disinfectant and probes, seeded. Uses the recording format and none of the
 * detection code, so that what is found in it is found honestly.
 */
@NullMarked
package bywash.samples.simulation;

import org.jspecify.annotations.NullMarked;
