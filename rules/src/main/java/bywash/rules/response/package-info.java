/**
 * The response sheet of an incident: what happened in order, how much, what the readings rule out, and what to do, each step with
 * the time it was done. Sees alarm, chlorine, detect, event, site and water; no engine.
 */
@NullMarked
package bywash.rules.response;

import org.jspecify.annotations.NullMarked;
