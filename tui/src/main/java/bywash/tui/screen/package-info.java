/**
 * Draws views and turns key presses into entries. A screen is first a {@link bywash.tui.screen.Picture}, a grid of
 * styled cells; only what differs from the last picture is sent. Sees views and Lanterna; never the feed, never Swing.
 */
@NullMarked
package bywash.tui.screen;

import org.jspecify.annotations.NullMarked;
