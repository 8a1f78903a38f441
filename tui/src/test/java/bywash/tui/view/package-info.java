/** Tests of the views' words, units and trends. */
@NullMarked
package bywash.tui.view;

import org.jspecify.annotations.NullMarked;
