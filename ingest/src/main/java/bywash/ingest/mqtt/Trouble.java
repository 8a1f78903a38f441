package bywash.ingest.mqtt;

import com.hivemq.client.mqtt.exceptions.ConnectionClosedException;
import com.hivemq.client.mqtt.exceptions.MqttDecodeException;
import com.hivemq.client.mqtt.mqtt3.exceptions.Mqtt3ConnAckException;
import com.hivemq.client.mqtt.mqtt3.exceptions.Mqtt3DisconnectException;
import com.hivemq.client.mqtt.mqtt5.exceptions.Mqtt5ConnAckException;
import com.hivemq.client.mqtt.mqtt5.exceptions.Mqtt5DisconnectException;
import com.hivemq.client.mqtt.mqtt5.message.disconnect.Mqtt5DisconnectReasonCode;
import java.net.ConnectException;
import java.net.UnknownHostException;
import java.util.Locale;
import java.util.concurrent.TimeoutException;
import javax.net.ssl.SSLException;
import org.jspecify.annotations.Nullable;

/**
 * What a failed try or a lost link means.
 *
 * @param words for the grower
 * @param refusal whether somebody must change something
 * @param version whether the broker may simply not speak this version of the protocol
 */
record Trouble(String words, boolean refusal, boolean version) {
    static Trouble of(Throwable cause, FeedSetup setup) {
        String broker = "broker " + Endpoint.of(setup.broker().url()).shown();
        if (cause instanceof FileFault fault) {
            return new Trouble(String.valueOf(fault.getMessage()), true, false);
        }
        Mqtt5ConnAckException v5 = find(cause, Mqtt5ConnAckException.class);
        if (v5 != null) {
            return refused(broker, setup, v5.getMqttMessage().getReasonCode().name());
        }
        Mqtt3ConnAckException v3 = find(cause, Mqtt3ConnAckException.class);
        if (v3 != null) {
            return refused(broker, setup, v3.getMqttMessage().getReturnCode().name());
        }
        SSLException tls = find(cause, SSLException.class);
        if (tls != null) {
            return tls(broker, tls);
        }
        return network(broker, setup, cause);
    }

    private static Trouble refused(String broker, FeedSetup setup, String code) {
        boolean named = setup.broker().login().username() != null;
        return switch (code) {
            case "UNSUPPORTED_PROTOCOL_VERSION" ->
                new Trouble(broker + " speaks neither MQTT 5 nor MQTT 3.1.1", true, true);
            case "BAD_USER_NAME_OR_PASSWORD", "NOT_AUTHORIZED" ->
                new Trouble(
                        named
                                ? broker + " refused the password; check username and password-file or password-env"
                                : broker + " wants a login; give username and password-file under broker",
                        true,
                        false);
            case "CLIENT_IDENTIFIER_NOT_VALID", "IDENTIFIER_REJECTED" ->
                new Trouble(broker + " refused the client id " + setup.clientId() + "; change client-id", true, false);
            case "BANNED" -> new Trouble(broker + " has banned this client; ask who runs it", true, false);
            case "SERVER_UNAVAILABLE", "SERVER_BUSY", "QUOTA_EXCEEDED", "CONNECTION_RATE_EXCEEDED" ->
                new Trouble(broker + " is too busy just now (" + words(code) + ")", false, false);
            default -> new Trouble(broker + " refused the connection (" + words(code) + ")", true, false);
        };
    }

    private static Trouble tls(String broker, SSLException e) {
        String text = allMessages(e);
        String why;
        if (text.contains("No name matching") || text.contains("No subject alternative")) {
            why = "its certificate is for another name; check the host in url";
        } else if (text.contains("NotAfter") || text.contains("NotBefore")) {
            why = "its certificate has expired or is not valid yet; renew it, or set the clock of this machine";
        } else if (text.contains("PKIX") || text.contains("unable to find valid certification path")) {
            why = "its certificate is not trusted; check ca-file";
        } else if (text.contains("not an SSL/TLS record") || text.contains("Unsupported or unrecognized SSL message")) {
            why = "the answer is not TLS; check the port and use mqtt or ws if the broker has no TLS";
        } else {
            why = String.valueOf(e.getMessage());
        }
        return new Trouble(broker + ": no encrypted connection: " + why, true, false);
    }

    private static Trouble network(String broker, FeedSetup setup, Throwable cause) {
        if (find(cause, UnknownHostException.class) != null) {
            String host = Endpoint.of(setup.broker().url()).host();
            return new Trouble(
                    broker + ": the name " + host + " is not known; check url and the network", false, false);
        }
        if (find(cause, TimeoutException.class) != null || allMessages(cause).contains("timed out")) {
            return new Trouble(broker + " did not answer in time; check url and the network", false, false);
        }
        if (find(cause, ConnectException.class) != null) {
            return new Trouble(broker + " does not take connections; is it running?", false, false);
        }
        Mqtt5DisconnectException said = find(cause, Mqtt5DisconnectException.class);
        if (said != null) {
            return said(broker, setup, said.getMqttMessage().getReasonCode());
        }
        boolean ended = find(cause, ConnectionClosedException.class) != null
                || find(cause, Mqtt3DisconnectException.class) != null
                || find(cause, MqttDecodeException.class) != null;
        return ended
                ? new Trouble(broker + " closed the connection", false, true)
                : new Trouble(broker + ": " + String.valueOf(cause.getMessage()), false, false);
    }

    private static Trouble said(String broker, FeedSetup setup, Mqtt5DisconnectReasonCode code) {
        return switch (code) {
            case SESSION_TAKEN_OVER ->
                new Trouble(
                        broker + ": another client took the client id " + setup.clientId() + "; change client-id",
                        true,
                        false);
            case NOT_AUTHORIZED -> new Trouble(broker + " withdrew the permission to connect", true, false);
            default -> new Trouble(broker + " closed the connection (" + words(code.name()) + ")", false, true);
        };
    }

    private static String words(String code) {
        return code.toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String allMessages(Throwable e) {
        StringBuilder all = new StringBuilder();
        int depth = 0;
        for (Throwable t = e; t != null && depth < 10; t = t.getCause(), depth++) {
            all.append(t.getMessage()).append(' ');
        }
        return all.toString();
    }

    private static <T extends Throwable> @Nullable T find(Throwable e, Class<T> type) {
        int depth = 0;
        for (Throwable t = e; t != null && depth < 10; t = t.getCause(), depth++) {
            if (type.isInstance(t)) {
                return type.cast(t);
            }
        }
        return null;
    }
}
