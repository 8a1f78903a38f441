package bywash.ingest.mqtt;

import bywash.ingest.recording.RecordedLine;
import com.hivemq.client.mqtt.MqttClientBuilder;
import com.hivemq.client.mqtt.lifecycle.MqttClientDisconnectedListener;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/** A link over either version of the client. */
final class ClientLink implements Link {
    private final ClientAdapter client;
    private final Login login;

    ClientLink(MqttClientBuilder builder, Version version, Login login, Ends ends) {
        MqttClientDisconnectedListener ended = c -> ends.ended().accept(this, c.getCause());
        this.login = login;
        this.client = switch (version) {
            case V5 -> new Mqtt5Adapter(builder, ended);
            case V3 -> new Mqtt3Adapter(builder, ended);
        };
        client.onMessage((topic, payload, qos, retain) ->
                ends.sink().accept(new RecordedLine.Message(ends.clock().instant(), topic, payload, qos, retain)));
    }

    @Override
    public CompletableFuture<?> connect() {
        return client.connect(KEEP_ALIVE, login.username, login.password);
    }

    @Override
    public CompletableFuture<List<Integer>> subscribe(List<String> topics) {
        return client.subscribe(topics).exceptionally(this::refused);
    }

    private List<Integer> refused(Throwable e) {
        Throwable cause = e instanceof CompletionException && e.getCause() != null ? e.getCause() : e;
        List<Integer> codes = client.refusals(cause);
        if (codes == null) {
            throw new CompletionException(cause);
        }
        return codes;
    }

    @Override
    public CompletableFuture<?> disconnect() {
        return client.disconnect();
    }
}
