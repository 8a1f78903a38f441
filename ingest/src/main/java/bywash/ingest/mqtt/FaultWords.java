package bywash.ingest.mqtt;

import bywash.ingest.mqtt.FeedState.Phase;
import com.hivemq.client.mqtt.mqtt3.exceptions.Mqtt3ConnAckException;
import com.hivemq.client.mqtt.mqtt5.exceptions.Mqtt5ConnAckException;
import java.net.URI;
import java.util.Locale;
import javax.net.ssl.SSLException;

/** Says in one line what is wrong with a connection and what would be right. */
final class FaultWords {
    private FaultWords() {}

    static FeedState of(URI url, Throwable cause) {
        if (cause instanceof Mqtt5ConnAckException refused) {
            return refused(url, refused.getMqttMessage().getReasonCode().name());
        }
        if (cause instanceof Mqtt3ConnAckException refused) {
            return refused(url, refused.getMqttMessage().getReturnCode().name());
        }
        if (cause instanceof SubscriptionRefused) {
            return new FeedState(Phase.REFUSED, cause.getMessage() + "; give this user the right to read it");
        }
        for (Throwable t = cause; t != null; t = t.getCause()) {
            if (t instanceof SSLException) {
                return new FeedState(
                        Phase.REFUSED, "no trusted connection to " + url + "; check ca-file and the broker's name");
            }
        }
        return new FeedState(Phase.LOST, "no broker at " + url + "; is it running? Trying again");
    }

    private static FeedState refused(URI url, String code) {
        String words = code.toLowerCase(Locale.ROOT).replace('_', ' ');
        boolean rights = words.contains("authori") || words.contains("password");
        return new FeedState(
                Phase.REFUSED,
                "broker " + url + " says " + words + (rights ? "; check username and password-file" : ""));
    }
}
