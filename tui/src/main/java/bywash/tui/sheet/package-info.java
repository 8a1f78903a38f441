/** Writes a response sheet as text and as Markdown. Sees rules.response; no screen, no files. */
@NullMarked
package bywash.tui.sheet;

import org.jspecify.annotations.NullMarked;
