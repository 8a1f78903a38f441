/** The commands and their exit codes. Thin: each wires a feed to the watch and prints. */
@NullMarked
package bywash.tui.command;

import org.jspecify.annotations.NullMarked;
