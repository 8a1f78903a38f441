/** Numbers in words, the same everywhere. Sees nothing else. */
@NullMarked
package bywash.rules.text;

import org.jspecify.annotations.NullMarked;
