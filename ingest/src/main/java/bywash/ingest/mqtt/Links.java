package bywash.ingest.mqtt;

import com.hivemq.client.mqtt.MqttClientBuilder;
import com.hivemq.client.mqtt.datatypes.MqttQos;
import com.hivemq.client.mqtt.mqtt3.Mqtt3AsyncClient;
import com.hivemq.client.mqtt.mqtt3.message.publish.Mqtt3Publish;
import com.hivemq.client.mqtt.mqtt3.message.subscribe.suback.Mqtt3SubAckReturnCode;
import com.hivemq.client.mqtt.mqtt5.Mqtt5AsyncClient;
import com.hivemq.client.mqtt.mqtt5.message.publish.Mqtt5Publish;
import com.hivemq.client.mqtt.mqtt5.message.subscribe.suback.Mqtt5SubAckReasonCode;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/** The two protocol versions behind one small interface. */
final class Links {
    private static final int KEEP_ALIVE_S = 30;

    /** Takes what is published. */
    interface Receiver {
        void receive(String topic, byte[] payload, int qos, boolean retain);
    }

    private Links() {}

    static ClientLink version5(
            MqttClientBuilder builder,
            @Nullable String user,
            byte @Nullable [] password,
            Receiver receiver,
            BiConsumer<ClientLink, String> lost) {
        AtomicReference<@Nullable ClientLink> self = new AtomicReference<>();
        Mqtt5AsyncClient client = builder.useMqttVersion5()
                .addDisconnectedListener(c -> tell(self.get(), c.getCause(), lost))
                .buildAsync();
        ClientLink link = new ClientLink() {
            @Override
            public CompletableFuture<Void> open(List<String> topics) {
                var connect = client.connectWith().cleanStart(true).keepAlive(KEEP_ALIVE_S);
                if (user != null) {
                    var auth = connect.simpleAuth().username(user);
                    connect = (password == null ? auth : auth.password(password)).applySimpleAuth();
                }
                return connect.send().thenCompose(ack -> subscribe(client, topics, receiver));
            }

            @Override
            public void close() {
                client.disconnect();
            }
        };
        self.set(link);
        return link;
    }

    private static CompletableFuture<Void> subscribe(Mqtt5AsyncClient client, List<String> topics, Receiver receiver) {
        List<CompletableFuture<Void>> all = new ArrayList<>();
        for (String topic : topics) {
            all.add(client.subscribeWith()
                    .topicFilter(topic)
                    .qos(MqttQos.AT_LEAST_ONCE)
                    .callback((Mqtt5Publish p) -> receiver.receive(
                            p.getTopic().toString(),
                            p.getPayloadAsBytes(),
                            p.getQos().getCode(),
                            p.isRetain()))
                    .send()
                    .thenCompose(ack ->
                            granted(topic, ack.getReasonCodes().stream().noneMatch(Mqtt5SubAckReasonCode::isError))));
        }
        return CompletableFuture.allOf(all.toArray(CompletableFuture[]::new));
    }

    static ClientLink version3(
            MqttClientBuilder builder,
            @Nullable String user,
            byte @Nullable [] password,
            Receiver receiver,
            BiConsumer<ClientLink, String> lost) {
        AtomicReference<@Nullable ClientLink> self = new AtomicReference<>();
        Mqtt3AsyncClient client = builder.useMqttVersion3()
                .addDisconnectedListener(c -> tell(self.get(), c.getCause(), lost))
                .buildAsync();
        ClientLink link = new ClientLink() {
            @Override
            public CompletableFuture<Void> open(List<String> topics) {
                var connect = client.connectWith().cleanSession(true).keepAlive(KEEP_ALIVE_S);
                if (user != null) {
                    var auth = connect.simpleAuth().username(user);
                    connect = (password == null ? auth : auth.password(password)).applySimpleAuth();
                }
                return connect.send().thenCompose(ack -> subscribe(client, topics, receiver));
            }

            @Override
            public void close() {
                client.disconnect();
            }
        };
        self.set(link);
        return link;
    }

    private static CompletableFuture<Void> subscribe(Mqtt3AsyncClient client, List<String> topics, Receiver receiver) {
        List<CompletableFuture<Void>> all = new ArrayList<>();
        for (String topic : topics) {
            all.add(client.subscribeWith()
                    .topicFilter(topic)
                    .qos(MqttQos.AT_LEAST_ONCE)
                    .callback((Mqtt3Publish p) -> receiver.receive(
                            p.getTopic().toString(),
                            p.getPayloadAsBytes(),
                            p.getQos().getCode(),
                            p.isRetain()))
                    .send()
                    .thenCompose(ack ->
                            granted(topic, ack.getReturnCodes().stream().noneMatch(Mqtt3SubAckReturnCode::isError))));
        }
        return CompletableFuture.allOf(all.toArray(CompletableFuture[]::new));
    }

    private static CompletableFuture<Void> granted(String topic, boolean yes) {
        return yes
                ? CompletableFuture.completedFuture(null)
                : CompletableFuture.failedFuture(
                        new SubscriptionRefused("the broker refuses a subscription to " + topic));
    }

    private static void tell(@Nullable ClientLink link, Throwable cause, BiConsumer<ClientLink, String> lost) {
        if (link != null) {
            String why = cause.getMessage();
            lost.accept(link, why == null ? "connection closed" : why);
        }
    }
}
