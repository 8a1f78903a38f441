package bywash.tui.command;

import java.nio.file.Path;

/** Where state is kept when no option says so (XDG Base Directory Specification). */
final class StateFolder {
    static final String DESCRIPTION =
            "Where the journal is kept. Default: $$XDG_STATE_HOME/bywash or ~/.local/state/bywash.";

    private StateFolder() {}

    static Path standard() {
        String given = System.getenv("XDG_STATE_HOME");
        Path base = given != null && !given.isEmpty()
                ? Path.of(given)
                : Path.of(System.getProperty("user.home"), ".local", "state");
        return base.resolve("bywash");
    }
}
