package bywash.ingest.mqtt;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.BrokerSettings;
import com.hivemq.client.mqtt.MqttClient;
import com.hivemq.client.mqtt.MqttClientBuilder;
import com.hivemq.client.mqtt.MqttClientExecutorConfig;
import com.hivemq.client.mqtt.MqttClientTransportConfig;
import com.hivemq.client.mqtt.MqttClientTransportConfigBuilder;
import com.hivemq.client.mqtt.MqttWebSocketConfig;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/** One try at one connection, in one version of the protocol. Thrown away when it ends. */
interface Link {
    /** Quiet for this long, a ping is sent; as long again without an answer and the link counts as dead. Seconds. */
    int KEEP_ALIVE = 30;

    CompletableFuture<?> connect();

    /** Subscribes at QoS 1. One return code a topic, in order; 128 and above are refusals. */
    CompletableFuture<List<Integer>> subscribe(List<String> topics);

    /** Says goodbye. */
    CompletableFuture<?> disconnect();

    /** The version of the protocol. */
    enum Version {
        V5("MQTT 5"),
        V3("MQTT 3.1.1");

        final String words;

        Version(String words) {
            this.words = words;
        }

        Version other() {
            return this == V5 ? V3 : V5;
        }
    }

    /** Where messages go, and who hears that the link has ended. */
    record Ends(Consumer<RecordedLine.Message> sink, InstantSource clock, BiConsumer<Link, Throwable> ended) {}

    /** A new link, not yet connected. */
    static Link open(Version version, FeedSetup setup, Ends ends) throws FileFault {
        Login login = Login.of(setup.broker());
        MqttClientTransportConfig transport = transport(setup.broker());
        MqttClientBuilder builder = MqttClient.builder()
                .identifier(setup.clientId())
                .transportConfig(transport)
                .executorConfig(
                        MqttClientExecutorConfig.builder().nettyThreads(1).build());
        return new ClientLink(builder, version, login, ends);
    }

    static MqttClientTransportConfig transport(BrokerSettings broker) throws FileFault {
        Endpoint at = Endpoint.of(broker.url());
        MqttClientTransportConfigBuilder transport = MqttClientTransportConfig.builder()
                .serverHost(at.host())
                .serverPort(at.port())
                .socketConnectTimeout(10, TimeUnit.SECONDS)
                .mqttConnectTimeout(10, TimeUnit.SECONDS);
        if (at.encrypted()) {
            Path ca = broker.caFile();
            // no hostname verifier of our own: the client then checks the name as HTTPS does
            Path own = broker.login().certificateFile();
            Path key = broker.login().keyFile();
            transport = transport
                    .sslConfig()
                    .trustManagerFactory(ca == null ? null : Trust.of(ca))
                    .keyManagerFactory(own == null || key == null ? null : OwnCertificate.of(own, key))
                    .applySslConfig();
        }
        if (at.webSocket()) {
            transport = transport.webSocketConfig(
                    MqttWebSocketConfig.builder().serverPath(at.path()).build());
        }
        return transport.build();
    }
}
