/**
 * What a screen says, as plain records made from a frame: words, numbers and times in the site's units and time zone.
 * Pure: no terminal, no clock, no I/O. The only place where metric values become display units.
 */
@NullMarked
package bywash.tui.view;

import org.jspecify.annotations.NullMarked;
