package bywash.ingest.mqtt;

import bywash.ingest.recording.RecordedLine;
import com.hivemq.client.mqtt.MqttClientBuilder;
import com.hivemq.client.mqtt.MqttGlobalPublishFilter;
import com.hivemq.client.mqtt.datatypes.MqttQos;
import com.hivemq.client.mqtt.mqtt5.Mqtt5AsyncClient;
import com.hivemq.client.mqtt.mqtt5.exceptions.Mqtt5SubAckException;
import com.hivemq.client.mqtt.mqtt5.message.auth.Mqtt5SimpleAuth;
import com.hivemq.client.mqtt.mqtt5.message.connect.Mqtt5Connect;
import com.hivemq.client.mqtt.mqtt5.message.connect.Mqtt5ConnectBuilder;
import com.hivemq.client.mqtt.mqtt5.message.subscribe.Mqtt5Subscribe;
import com.hivemq.client.mqtt.mqtt5.message.subscribe.Mqtt5Subscription;
import com.hivemq.client.mqtt.mqtt5.message.subscribe.suback.Mqtt5SubAck;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/** A link in MQTT 5. */
final class Mqtt5Link implements Link {
    private final Mqtt5AsyncClient client;
    private final Mqtt5Connect connect;

    Mqtt5Link(MqttClientBuilder builder, Login login, Ends ends) {
        client = builder.useMqttVersion5()
                .addDisconnectedListener(c -> ends.ended().accept(this, c.getCause()))
                .buildAsync();
        client.publishes(
                MqttGlobalPublishFilter.ALL,
                m -> ends.sink()
                        .accept(new RecordedLine.Message(
                                ends.clock().instant(),
                                m.getTopic().toString(),
                                m.getPayloadAsBytes(),
                                m.getQos().getCode(),
                                m.isRetain())),
                Runnable::run);
        Mqtt5ConnectBuilder options = Mqtt5Connect.builder().cleanStart(true).keepAlive(KEEP_ALIVE);
        if (login.username != null) {
            options = options.simpleAuth(
                    login.password == null
                            ? Mqtt5SimpleAuth.builder().username(login.username).build()
                            : Mqtt5SimpleAuth.builder()
                                    .username(login.username)
                                    .password(login.password)
                                    .build());
        }
        connect = options.build();
    }

    @Override
    public CompletableFuture<?> connect() {
        return client.connect(connect);
    }

    @Override
    public CompletableFuture<List<Integer>> subscribe(List<String> topics) {
        List<Mqtt5Subscription> all = topics.stream()
                .map(t -> Mqtt5Subscription.builder()
                        .topicFilter(t)
                        .qos(MqttQos.AT_LEAST_ONCE)
                        .build())
                .toList();
        return client.subscribe(Mqtt5Subscribe.builder().addSubscriptions(all).build())
                .exceptionally(Mqtt5Link::refused)
                .thenApply(ack ->
                        ack.getReasonCodes().stream().map(c -> c.getCode()).toList());
    }

    /** The client turns an answer of refusals alone into an exception; the answer is in it. */
    private static Mqtt5SubAck refused(Throwable e) {
        Throwable cause = e instanceof CompletionException && e.getCause() != null ? e.getCause() : e;
        if (cause instanceof Mqtt5SubAckException refusal) {
            return refusal.getMqttMessage();
        }
        throw new CompletionException(cause);
    }

    @Override
    public CompletableFuture<?> disconnect() {
        return client.disconnect();
    }
}
