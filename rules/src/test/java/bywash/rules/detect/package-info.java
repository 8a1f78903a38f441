/** Holds the detector to textbook figures and to small sites whose water is known. */
@NullMarked
package bywash.rules.detect;

import org.jspecify.annotations.NullMarked;
