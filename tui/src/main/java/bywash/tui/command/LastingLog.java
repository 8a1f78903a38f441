package bywash.tui.command;

import java.util.logging.LogManager;

/**
 * A log that stays open while the program ends. The standard manager closes every handler in a shutdown hook of its own, beside
 * those that still stop the watch, so that what these say would be lost.
 */
public final class LastingLog extends LogManager {
    /** Must name this class before any class of the log is begun, this one included; a constant, so that reading it begins none. */
    static final String PROPERTY = "java.util.logging.manager";

    private volatile boolean kept;

    /** For the platform, which makes it by its name. */
    public LastingLog() {}

    /** From here on only {@link #end} closes what is open. */
    void keep() {
        kept = true;
    }

    /** Closes all handlers. */
    void end() {
        kept = false;
        reset();
    }

    @Override
    public void reset() {
        if (!kept) {
            super.reset();
        }
    }
}
