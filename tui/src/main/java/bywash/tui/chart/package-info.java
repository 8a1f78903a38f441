/**
 * Past values as text plots: windows of time, axes, braille or ASCII cells, marks for what happened. Pure: same values,
 * same cells. Sees views; never Lanterna, never the feed.
 */
@NullMarked
package bywash.tui.chart;

import org.jspecify.annotations.NullMarked;
