package bywash.tui.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bywash.ingest.mqtt.FeedState;
import bywash.ingest.mqtt.FeedState.Phase;
import bywash.ingest.mqtt.InboundQueue;
import bywash.ingest.mqtt.MqttFeed;
import bywash.ingest.mqtt.MqttPublisher;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.BrokerSettings;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The live feed over real brokers: the one inside the program always, Mosquitto where it is installed. */
@Timeout(60)
class LiveFeedTest {
    private final BlockingQueue<FeedState> states = new LinkedBlockingQueue<>();
    private final InboundQueue queue = new InboundQueue();

    @TempDir
    Path folder;

    @Test
    void fallsBackToTheOldProtocolAndReceives() throws Exception {
        try (LoopbackBroker broker = new LoopbackBroker();
                MqttFeed feed = feed(broker.url(), null, null)) {
            feed.start();
            assertTrue(await(Phase.UP).detail().endsWith("(MQTT 3.1.1)"));
            publishAndReceive(broker.url());
        }
    }

    @Test
    void startsWithTheBrokerDownAndSubscribesAnewAfterARestart() throws Exception {
        int port = freePort();
        URI url = URI.create("mqtt://127.0.0.1:" + port);
        try (MqttFeed feed = feed(url, null, null)) {
            feed.start();
            assertTrue(await(Phase.LOST).detail().startsWith("no broker at " + url));
            try (LoopbackBroker broker = new LoopbackBroker(port)) {
                await(Phase.UP);
                publishAndReceive(broker.url());
            }
            await(Phase.LOST);
            try (LoopbackBroker broker = new LoopbackBroker(port)) {
                await(Phase.UP);
                publishAndReceive(broker.url());
            }
        }
    }

    @Test
    void speaksMqtt5WithMosquitto() throws Exception {
        int port = freePort();
        Process mosquitto = mosquitto("listener " + port + " 127.0.0.1\nallow_anonymous true\n");
        try (MqttFeed feed = feed(URI.create("mqtt://127.0.0.1:" + port), null, null)) {
            feed.start();
            assertTrue(await(Phase.UP).detail().endsWith("(MQTT 5)"));
            publishAndReceive(URI.create("mqtt://127.0.0.1:" + port));
        } finally {
            mosquitto.destroy();
        }
    }

    @Test
    void saysThatMosquittoRefusesThePassword() throws Exception {
        int port = freePort();
        Path empty = Files.writeString(folder.resolve("users"), "");
        Path password = Files.writeString(folder.resolve("password"), "wrong\n");
        Process mosquitto =
                mosquitto("listener " + port + " 127.0.0.1\nallow_anonymous false\npassword_file " + empty + "\n");
        try (MqttFeed feed = feed(URI.create("mqtt://127.0.0.1:" + port), "grower", password)) {
            feed.start();
            FeedState refused = await(Phase.REFUSED);
            assertTrue(refused.detail().endsWith("; check username and password-file"), refused.detail());
            assertTrue(!refused.detail().contains("wrong"), refused.detail());
        } finally {
            mosquitto.destroy();
        }
    }

    @Test
    void countsWhatDoesNotFitAndNeverBlocks() {
        InboundQueue small = new InboundQueue(2);
        Message message = new Message(InstantSource.system().instant(), "t", new byte[3], 0, false);
        assertTrue(small.offer(message));
        assertTrue(small.offer(message));
        assertEquals(false, small.offer(message));
        assertEquals(3, small.received());
        assertEquals(1, small.dropped());
    }

    private MqttFeed feed(
            URI url, @org.jspecify.annotations.Nullable String user, @org.jspecify.annotations.Nullable Path password) {
        return new MqttFeed(
                new BrokerSettings(url, user, password, null, null),
                List.of("larkfield/sump/level"),
                queue,
                InstantSource.system(),
                states::add);
    }

    private FeedState await(Phase phase) throws InterruptedException {
        while (true) {
            FeedState state = states.poll(30, TimeUnit.SECONDS);
            if (state == null) {
                throw new AssertionError("the feed never was " + phase);
            }
            if (state.phase() == phase) {
                return state;
            }
        }
    }

    private void publishAndReceive(URI url) throws InterruptedException {
        try (MqttPublisher publisher = new MqttPublisher(url)) {
            publisher.publish("larkfield/sump/level", "41.3".getBytes(StandardCharsets.UTF_8));
        }
        List<Message> got = new ArrayList<>();
        while (got.isEmpty()) {
            queue.drain(got, 1000);
        }
        assertEquals("41.3", new String(got.get(0).payload(), StandardCharsets.UTF_8));
    }

    private Process mosquitto(String settings) throws IOException, InterruptedException {
        Path program = Path.of("/usr/sbin/mosquitto");
        assumeTrue(Files.isExecutable(program), "mosquitto is not installed: this test is skipped");
        Path file = Files.writeString(folder.resolve("broker.conf"), "user root\n" + settings);
        return new ProcessBuilder(program.toString(), "-c", file.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("broker.log").toFile())
                .start();
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }
}
