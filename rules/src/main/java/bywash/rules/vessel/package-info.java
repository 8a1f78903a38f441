/**
 * The shapes of vessels: depth of water to volume and back, and the area of the free surface.
 *
 * <p>Lengths are in millimetres, volumes in litres, areas in square metres; the unit is in every name. Depth is measured
 * upwards from the lowest point of the inside. This package sees nothing but {@code java.lang} and {@code java.util}: no
 * other package of the project, no clock and no input or output.
 */
@NullMarked
package bywash.rules.vessel;

import org.jspecify.annotations.NullMarked;
