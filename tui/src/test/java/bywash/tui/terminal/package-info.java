/** The program on a real terminal, driven by keys. */
@NullMarked
package bywash.tui.terminal;

import org.jspecify.annotations.NullMarked;
