package bywash.rules.recovery;

/**
 * How much is fed after an incident, stepped a day at a time while tests are good; an elevated test goes back to none.
 *
 * <pre>
 *   HOLD --day, two chlorine zeros, good tests--> QUARTER --day, good tests--> HALF --> THREE_QUARTERS --> FULL
 *     ^------------------------------- elevated test -------------------------------------------------------'
 * </pre>
 *
 * The steps are common practice, no source.
 */
public enum FeedStage {
    HOLD(0),
    QUARTER(0.25),
    HALF(0.5),
    THREE_QUARTERS(0.75),
    FULL(1);

    private final double share;

    FeedStage(double share) {
        this.share = share;
    }

    /** Share of the usual feed. */
    public double share() {
        return share;
    }

    FeedStage next() {
        return this == FULL ? FULL : values()[ordinal() + 1];
    }
}
