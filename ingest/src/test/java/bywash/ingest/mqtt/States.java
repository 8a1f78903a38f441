package bywash.ingest.mqtt;

import static org.junit.jupiter.api.Assertions.assertNotNull;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.BrokerSettings;
import com.hivemq.client.mqtt.MqttClient;
import com.hivemq.client.mqtt.datatypes.MqttQos;
import com.hivemq.client.mqtt.mqtt3.Mqtt3BlockingClient;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** What the tests of the feed share: the states heard so far, to be waited for; a short backoff; a publisher. */
final class States {
    static final Backoff SHORT = new Backoff(Duration.ofMillis(50), Duration.ofMillis(200));
    private static final long PATIENCE = 15;

    private final BlockingQueue<FeedState> heard = new LinkedBlockingQueue<>();

    MqttFeed feed(BrokerSettings broker, InboundQueue queue, String... topics) {
        return made(broker, queue, topics).start();
    }

    /** One that does not start by itself. */
    MqttFeed made(BrokerSettings broker, InboundQueue queue, String... topics) {
        FeedSetup setup = FeedSetup.of(broker, "larkfield", Long.toHexString(System.nanoTime()), List.of(topics));
        return new MqttFeed(setup, queue, Clock.systemUTC(), SHORT, heard::add);
    }

    static BrokerSettings broker(String url) {
        return BrokerSettings.at(URI.create(url));
    }

    /** Waits until a state of this phase is heard; earlier ones of other phases are passed over. */
    FeedState await(FeedState.Phase phase) throws InterruptedException {
        List<FeedState> passed = new ArrayList<>();
        while (true) {
            FeedState state = heard.poll(PATIENCE, TimeUnit.SECONDS);
            assertNotNull(state, () -> "no " + phase + " within " + PATIENCE + " s after " + passed);
            passed.add(state);
            if (state.phase() == phase) {
                return state;
            }
        }
    }

    static List<RecordedLine.Message> take(InboundQueue queue, int count) throws InterruptedException {
        List<RecordedLine.Message> got = new ArrayList<>();
        while (got.size() < count) {
            int n = queue.drain(got::add, count - got.size(), Duration.ofSeconds(PATIENCE));
            if (n == 0) {
                throw new AssertionError("only " + got.size() + " of " + count + " messages came");
            }
        }
        return got;
    }

    static String text(RecordedLine.Message m) {
        return new String(m.payload(), StandardCharsets.UTF_8);
    }

    /** Publishes some payloads in order at QoS 1, from a client of its own. */
    static void publish(int port, String topic, boolean retain, String... payloads) {
        Mqtt3BlockingClient client = MqttClient.builder()
                .useMqttVersion3()
                .identifier("publisher")
                .serverHost("127.0.0.1")
                .serverPort(port)
                .buildBlocking();
        client.connect();
        for (String payload : payloads) {
            client.publishWith()
                    .topic(topic)
                    .qos(MqttQos.AT_LEAST_ONCE)
                    .retain(retain)
                    .payload(payload.getBytes(StandardCharsets.UTF_8))
                    .send();
        }
        client.disconnect();
    }
}
