/**
 * Other programs of the same user reach a running watch through a Unix domain socket in its state folder, which only its
 * owner can open. A caller sends one line of JSON that says what it wants and gets one line back; then either end is done, or
 * the screen of the watch is drawn at the caller's terminal: keys and sizes go in as {@link bywash.tui.attach.KeyFrames}, the
 * terminal's bytes come out. The screen itself runs in the watch, a thread a caller, so that whoever drops harms nothing.
 */
@NullMarked
package bywash.tui.attach;

import org.jspecify.annotations.NullMarked;
