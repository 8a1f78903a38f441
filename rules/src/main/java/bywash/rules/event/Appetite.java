package bywash.rules.event;

/** How fish take their feed. The shares are of the planned ration: common practice, no source. */
public enum Appetite {
    EAGER("eager", 1.0),
    NORMAL("normal", 1.0),
    POOR("poor", 0.5),
    NONE("none", 0.0);

    private final String word;
    private final double share;

    Appetite(String word, double share) {
        this.word = word;
        this.share = share;
    }

    public String word() {
        return word;
    }

    /** Share of the planned ration to give next time (0 to 1). */
    public double share() {
        return share;
    }
}
