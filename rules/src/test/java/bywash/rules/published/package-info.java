/** Reads the published check tables among the test resources. Sees nothing of the project. */
@NullMarked
package bywash.rules.published;

import org.jspecify.annotations.NullMarked;
