package bywash.ingest.mqtt;

/** The broker did not grant a subscription. */
final class SubscriptionRefused extends Exception {
    private static final long serialVersionUID = 1;

    SubscriptionRefused(String message) {
        super(message);
    }
}
