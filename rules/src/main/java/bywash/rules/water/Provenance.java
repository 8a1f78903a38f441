package bywash.rules.water;

/** How a published figure came into the project, so that a reader knows how far to lean on it. */
public enum Provenance {
    /** Read in a document that quotes the source. */
    FOUND("read in a document quoting the source"),
    /** Recalled, and to be confirmed against the source before anything rests on it. */
    FROM_MEMORY("from memory: to be confirmed against the source");

    private final String words;

    Provenance(String words) {
        this.words = words;
    }

    /** The mark to show beside the figure. */
    public String words() {
        return words;
    }
}
