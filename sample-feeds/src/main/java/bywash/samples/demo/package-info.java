/** The story of the demo: quiet water, a declared top-up, a valve left open. Sees the simulation alone. */
@NullMarked
package bywash.samples.demo;

import org.jspecify.annotations.NullMarked;
