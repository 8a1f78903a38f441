/** Tests of the plots, on values made by hand. */
@NullMarked
package bywash.tui.chart;

import org.jspecify.annotations.NullMarked;
