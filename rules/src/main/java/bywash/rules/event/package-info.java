/**
 * What the engine is told: readings, ticks, operator entries and the state of the feed. Every event carries its time.
 */
@NullMarked
package bywash.rules.event;

import org.jspecify.annotations.NullMarked;
