package bywash.tui.command;

/** Exit codes, listed in each command's help. */
final class ExitCode {
    static final int GOOD = 0;
    static final int USAGE = 2;
    static final int SITE_FILE = 3;
    static final int RECORDING = 4;
    static final int BROKER = 5;
    static final int OUR_FAULT = 70;

    private ExitCode() {}
}
