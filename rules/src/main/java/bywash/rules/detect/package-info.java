/**
 * Finds unplanned water in level readings. Sees site, vessel and event; never alarms, the engine or a clock.
 */
@NullMarked
package bywash.rules.detect;

import org.jspecify.annotations.NullMarked;
