/**
 * The one fold over events: routes readings to the rules, raises alarms, hands out snapshots. Sees all other rules packages.
 */
@NullMarked
package bywash.rules.engine;

import org.jspecify.annotations.NullMarked;
