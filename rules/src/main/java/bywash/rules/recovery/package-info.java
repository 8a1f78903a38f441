/**
 * What the fish and the bacteria have been through and how they come back: un-ionised ammonia, the bacteria's load, the
 * schedule of tests and of feed after an incident. Sees water; no alarms, no engine.
 */
@NullMarked
package bywash.rules.recovery;

import org.jspecify.annotations.NullMarked;
