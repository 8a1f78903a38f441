/**
 * {@code bywash calc}: one subcommand for each calculation on water, with units on every number in and out.
 *
 * <p>A thin skin over {@code bywash.rules.water} and {@code bywash.rules.vessel}: it turns typed measures into the units of the
 * rules, and answers into lines or JSON, with the source of the formula and the cautions of a dose. It sees no site file, no
 * feed and no screen, and decides nothing about water itself.
 */
@NullMarked
package bywash.tui.command.calc;

import org.jspecify.annotations.NullMarked;
