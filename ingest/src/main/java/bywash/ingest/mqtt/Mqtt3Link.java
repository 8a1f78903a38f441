package bywash.ingest.mqtt;

import bywash.ingest.recording.RecordedLine;
import com.hivemq.client.mqtt.MqttClientBuilder;
import com.hivemq.client.mqtt.MqttGlobalPublishFilter;
import com.hivemq.client.mqtt.datatypes.MqttQos;
import com.hivemq.client.mqtt.mqtt3.Mqtt3AsyncClient;
import com.hivemq.client.mqtt.mqtt3.exceptions.Mqtt3SubAckException;
import com.hivemq.client.mqtt.mqtt3.message.auth.Mqtt3SimpleAuth;
import com.hivemq.client.mqtt.mqtt3.message.connect.Mqtt3Connect;
import com.hivemq.client.mqtt.mqtt3.message.connect.Mqtt3ConnectBuilder;
import com.hivemq.client.mqtt.mqtt3.message.subscribe.Mqtt3Subscribe;
import com.hivemq.client.mqtt.mqtt3.message.subscribe.Mqtt3Subscription;
import com.hivemq.client.mqtt.mqtt3.message.subscribe.suback.Mqtt3SubAck;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/** A link in MQTT 3.1.1, for brokers that have no 5. */
final class Mqtt3Link implements Link {
    private final Mqtt3AsyncClient client;
    private final Mqtt3Connect connect;

    Mqtt3Link(MqttClientBuilder builder, Login login, Ends ends) {
        client = builder.useMqttVersion3()
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
        Mqtt3ConnectBuilder options = Mqtt3Connect.builder().cleanSession(true).keepAlive(KEEP_ALIVE);
        if (login.username != null) {
            options = options.simpleAuth(
                    login.password == null
                            ? Mqtt3SimpleAuth.builder().username(login.username).build()
                            : Mqtt3SimpleAuth.builder()
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
        List<Mqtt3Subscription> all = topics.stream()
                .map(t -> Mqtt3Subscription.builder()
                        .topicFilter(t)
                        .qos(MqttQos.AT_LEAST_ONCE)
                        .build())
                .toList();
        return client.subscribe(Mqtt3Subscribe.builder().addSubscriptions(all).build())
                .exceptionally(Mqtt3Link::refused)
                .thenApply(ack ->
                        ack.getReturnCodes().stream().map(c -> c.getCode()).toList());
    }

    /** The client turns an answer of refusals alone into an exception; the answer is in it. */
    private static Mqtt3SubAck refused(Throwable e) {
        Throwable cause = e instanceof CompletionException && e.getCause() != null ? e.getCause() : e;
        if (cause instanceof Mqtt3SubAckException refusal) {
            return refusal.getMqttMessage();
        }
        throw new CompletionException(cause);
    }

    @Override
    public CompletableFuture<?> disconnect() {
        return client.disconnect();
    }
}
