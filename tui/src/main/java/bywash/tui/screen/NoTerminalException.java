package bywash.tui.screen;

import java.io.IOException;

/** There is no terminal to draw on; the message says what to do instead. */
public final class NoTerminalException extends IOException {
    private static final long serialVersionUID = 1L;

    NoTerminalException(String message) {
        super(message);
    }
}
