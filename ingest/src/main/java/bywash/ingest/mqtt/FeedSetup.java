package bywash.ingest.mqtt;

import bywash.ingest.site.BrokerSettings;
import java.util.List;

/**
 * What to connect to and what to ask for.
 *
 * @param clientId unique at the broker; two clients of one id throw each other out
 * @param topics MQTT topic filters, at least one
 */
public record FeedSetup(BrokerSettings broker, String clientId, List<String> topics) {
    public FeedSetup {
        topics = topics.stream().distinct().toList();
        if (topics.isEmpty() || clientId.isEmpty()) {
            throw new IllegalArgumentException("a feed needs a client id and at least one topic");
        }
    }

    /**
     * With the client id of the site file, or one made from the site.
     *
     * @param suffix something random, so that two watches of one site do not throw each other out
     */
    public static FeedSetup of(BrokerSettings broker, String siteId, String suffix, List<String> topics) {
        String given = broker.clientId();
        return new FeedSetup(broker, given != null ? given : "bywash-" + siteId + "-" + suffix, topics);
    }
}
