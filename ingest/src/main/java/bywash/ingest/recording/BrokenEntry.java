package bywash.ingest.recording;

/** Text that is no recorded line; the message says what is wrong, {@link #right()} what would be right. */
public final class BrokenEntry extends Exception {
    private static final long serialVersionUID = 1L;
    private final String right;

    BrokenEntry(String what, String right) {
        super(what, null, false, false);
        this.right = right;
    }

    public String what() {
        return String.valueOf(getMessage());
    }

    public String right() {
        return right;
    }
}
