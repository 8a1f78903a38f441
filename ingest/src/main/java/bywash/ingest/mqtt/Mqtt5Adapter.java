package bywash.ingest.mqtt;

import com.hivemq.client.mqtt.MqttClientBuilder;
import com.hivemq.client.mqtt.MqttGlobalPublishFilter;
import com.hivemq.client.mqtt.datatypes.MqttQos;
import com.hivemq.client.mqtt.lifecycle.MqttClientDisconnectedListener;
import com.hivemq.client.mqtt.mqtt5.Mqtt5AsyncClient;
import com.hivemq.client.mqtt.mqtt5.exceptions.Mqtt5SubAckException;
import com.hivemq.client.mqtt.mqtt5.message.auth.Mqtt5SimpleAuth;
import com.hivemq.client.mqtt.mqtt5.message.auth.Mqtt5SimpleAuthBuilder;
import com.hivemq.client.mqtt.mqtt5.message.connect.Mqtt5Connect;
import com.hivemq.client.mqtt.mqtt5.message.connect.Mqtt5ConnectBuilder;
import com.hivemq.client.mqtt.mqtt5.message.subscribe.Mqtt5Subscribe;
import com.hivemq.client.mqtt.mqtt5.message.subscribe.Mqtt5Subscription;
import com.hivemq.client.mqtt.mqtt5.message.subscribe.suback.Mqtt5SubAck;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;

/** The client in MQTT 5. */
final class Mqtt5Adapter implements ClientAdapter {
    private final Mqtt5AsyncClient client;

    Mqtt5Adapter(MqttClientBuilder builder, MqttClientDisconnectedListener ended) {
        client = builder.useMqttVersion5().addDisconnectedListener(ended).buildAsync();
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
        Mqtt5ConnectBuilder options = Mqtt5Connect.builder().cleanStart(true).keepAlive(keepAliveS);
        if (username != null) {
            Mqtt5SimpleAuthBuilder.Complete auth = Mqtt5SimpleAuth.builder().username(username);
            options = options.simpleAuth(
                    password == null ? auth.build() : auth.password(password).build());
        }
        return client.connect(options.build());
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
                .thenApply(Mqtt5Adapter::codes);
    }

    @Override
    public @Nullable List<Integer> refusals(Throwable fault) {
        return fault instanceof Mqtt5SubAckException refusal ? codes(refusal.getMqttMessage()) : null;
    }

    private static List<Integer> codes(Mqtt5SubAck answer) {
        return answer.getReasonCodes().stream().map(c -> c.getCode()).toList();
    }

    @Override
    public CompletableFuture<?> disconnect() {
        return client.disconnect();
    }
}
