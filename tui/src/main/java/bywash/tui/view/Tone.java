package bywash.tui.view;

/** How abnormal something is; a screen may colour by it, always beside a word or a mark. */
public enum Tone {
    PLAIN,
    WARNING,
    CRITICAL
}
