package bywash.ingest.mqtt;

import com.hivemq.client.mqtt.MqttClientBuilder;
import com.hivemq.client.mqtt.MqttGlobalPublishFilter;
import com.hivemq.client.mqtt.datatypes.MqttQos;
import com.hivemq.client.mqtt.lifecycle.MqttClientDisconnectedListener;
import com.hivemq.client.mqtt.mqtt3.Mqtt3AsyncClient;
import com.hivemq.client.mqtt.mqtt3.exceptions.Mqtt3SubAckException;
import com.hivemq.client.mqtt.mqtt3.message.auth.Mqtt3SimpleAuth;
import com.hivemq.client.mqtt.mqtt3.message.auth.Mqtt3SimpleAuthBuilder;
import com.hivemq.client.mqtt.mqtt3.message.connect.Mqtt3Connect;
import com.hivemq.client.mqtt.mqtt3.message.connect.Mqtt3ConnectBuilder;
import com.hivemq.client.mqtt.mqtt3.message.subscribe.Mqtt3Subscribe;
import com.hivemq.client.mqtt.mqtt3.message.subscribe.Mqtt3Subscription;
import com.hivemq.client.mqtt.mqtt3.message.subscribe.suback.Mqtt3SubAck;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;

/** The client in MQTT 3.1.1, for brokers that have no 5. */
final class Mqtt3Adapter implements ClientAdapter {
    private final Mqtt3AsyncClient client;

    Mqtt3Adapter(MqttClientBuilder builder, MqttClientDisconnectedListener ended) {
        client = builder.useMqttVersion3().addDisconnectedListener(ended).buildAsync();
    }

    @Override
    public void onMessage(Heard heard) {
        client.publishes(
                MqttGlobalPublishFilter.ALL,
                m -> heard.message(
                        m.getTopic().toString(),
                        m.getPayloadAsBytes(),
                        m.getQos().getCode(),
                        m.isRetain()),
                Runnable::run);
    }

    @Override
    public CompletableFuture<?> connect(int keepAliveS, @Nullable String username, byte @Nullable [] password) {
        Mqtt3ConnectBuilder options = Mqtt3Connect.builder().cleanSession(true).keepAlive(keepAliveS);
        if (username != null) {
            Mqtt3SimpleAuthBuilder.Complete auth = Mqtt3SimpleAuth.builder().username(username);
            options = options.simpleAuth(
                    password == null ? auth.build() : auth.password(password).build());
        }
        return client.connect(options.build());
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
                .thenApply(Mqtt3Adapter::codes);
    }

    @Override
    public @Nullable List<Integer> refusals(Throwable fault) {
        return fault instanceof Mqtt3SubAckException refusal ? codes(refusal.getMqttMessage()) : null;
    }

    private static List<Integer> codes(Mqtt3SubAck answer) {
        return answer.getReturnCodes().stream().map(c -> c.getCode()).toList();
    }

    @Override
    public CompletableFuture<?> disconnect() {
        return client.disconnect();
    }
}
