package bywash.ingest.mqtt;

import com.hivemq.client.mqtt.MqttClient;
import com.hivemq.client.mqtt.datatypes.MqttQos;
import com.hivemq.client.mqtt.mqtt3.Mqtt3BlockingClient;
import java.net.URI;
import java.util.UUID;

/** Publishes to a broker on this machine: for the demo and for tests. Blocks its caller. */
public final class MqttPublisher implements AutoCloseable {
    static {
        PlainNetty.ask();
    }

    private final Mqtt3BlockingClient client;

    /** Connects. */
    public MqttPublisher(URI url) {
        client = MqttClient.builder()
                .useMqttVersion3()
                .identifier("publisher-" + UUID.randomUUID().toString().substring(0, 8))
                .serverHost(url.getHost())
                .serverPort(url.getPort())
                .buildBlocking();
        client.connect();
    }

    public void publish(String topic, byte[] payload) {
        client.publishWith()
                .topic(topic)
                .qos(MqttQos.AT_MOST_ONCE)
                .payload(payload)
                .send();
    }

    @Override
    public void close() {
        client.disconnect();
    }
}
