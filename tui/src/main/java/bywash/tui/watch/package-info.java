/** The loop that owns the engine: lines in, alarm lines and snapshots out. Draws nothing. */
@NullMarked
package bywash.tui.watch;

import org.jspecify.annotations.NullMarked;
