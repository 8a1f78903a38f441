package bywash.ingest.mqtt;

/** Where the connection stands, in words a grower can use. */
public record FeedState(Phase phase, String detail) {
    /** Phases of the connection. */
    public enum Phase {
        CONNECTING,
        UP,
        LOST,
        /** The broker said no: a password, a certificate, a right to subscribe. */
        REFUSED,
        STOPPED
    }

    public boolean up() {
        return phase == Phase.UP;
    }
}
