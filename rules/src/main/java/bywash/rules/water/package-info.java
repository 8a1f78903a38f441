/**
 * The chemistry of the water, each formula family in a class of its own with its published source.
 *
 * <p>One unit a quantity, written in its name: temperature in degrees Celsius, concentrations in mg/L, alkalinity in mg/L as
 * calcium carbonate, chlorine in mg/L as Cl2, nitrogen species in mg/L as N, volume in litres, time in hours unless the name
 * says minutes. Kelvin exists only inside {@link bywash.rules.water.Kelvin}. A value outside the range a formula was made
 * for is refused with an {@link IllegalArgumentException} that names the field, the value and the range.
 *
 * <p>Everything here is a pure function: this package sees {@code java.lang} and {@code java.util} only, no other package of
 * the project, no clock, no input or output, and takes its exponentials from {@link StrictMath} so that every machine gets the
 * same last bit.
 */
@NullMarked
package bywash.rules.water;

import org.jspecify.annotations.NullMarked;
