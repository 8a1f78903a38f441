/** How well the chlorine estimate holds against the truth of the simulated site. Tests tagged slow; they print. */
@org.jspecify.annotations.NullMarked
package bywash.tui.bench.chlorine;
