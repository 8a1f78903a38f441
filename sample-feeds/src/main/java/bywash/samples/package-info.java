/** Sample recordings and how they are made. */
@NullMarked
package bywash.samples;

import org.jspecify.annotations.NullMarked;
