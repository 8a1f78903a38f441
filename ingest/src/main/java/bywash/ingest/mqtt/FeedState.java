package bywash.ingest.mqtt;

import java.time.Instant;

/**
 * How the feed stands, in words for the grower.
 *
 * <pre>
 *   CONNECTING --> UP --> LOST --> UP ...
 *        \__________\_______\____> REFUSED --> UP ...     (it keeps trying from every state)
 *   any --> STOPPED, for good
 * </pre>
 *
 * @param detail what is wrong and what to check; never a password
 * @param since when this phase began
 */
public record FeedState(Phase phase, String detail, Instant since) {
    /** What the feed is doing. */
    public enum Phase {
        /** Not connected yet since the start; trying. */
        CONNECTING,
        /** Connected and subscribed. */
        UP,
        /** Was connected; trying again. */
        LOST,
        /** The broker, or a file of ours, stands in the way and somebody must change it; trying again all the same. */
        REFUSED,
        /** Closed. */
        STOPPED
    }

    public boolean up() {
        return phase == Phase.UP;
    }
}
