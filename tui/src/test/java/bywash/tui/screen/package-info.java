/** Tests of the screens, as whole pictures, as key sequences, and on a virtual terminal. */
@NullMarked
package bywash.tui.screen;

import org.jspecify.annotations.NullMarked;
