/**
 * Alarms after ISA-18.2 / IEC 62682: kinds, priorities, states and the one transition method. Sees events and the site.
 */
@NullMarked
package bywash.rules.alarm;

import org.jspecify.annotations.NullMarked;
