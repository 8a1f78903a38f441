package bywash.ingest.mqtt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.mqtt.FeedState.Phase;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.BrokerLogin;
import bywash.ingest.site.BrokerSettings;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Against the broker inside the process, so that it runs everywhere. */
@Timeout(60)
class MqttFeedTest {
    private final States states = new States();
    private final InboundQueue queue = new InboundQueue();

    @Test
    void receivesOverWebSockets() throws Exception {
        try (TestBroker broker = new TestBroker(0);
                MqttFeed feed = states.feed(States.broker(broker.webSocketUrl()), queue, "a/b")) {
            assertEquals(
                    "connected to broker " + broker.webSocketUrl().replace("/mqtt", "") + ", MQTT 3.1.1",
                    states.await(Phase.UP).detail());
            States.publish(broker.port(), "a/b", false, "7.1");
            assertEquals("7.1", States.text(States.take(queue, 1).get(0)));
            assertEquals(Phase.UP, feed.state().phase());
        }
    }

    @Test
    void receivesWhatWasKeptAndThenWhatComesInOrder() throws Exception {
        try (TestBroker broker = new TestBroker(0)) {
            States.publish(broker.port(), "larkfield/ph", true, "6.8");
            try (MqttFeed feed = states.feed(States.broker(broker.url()), queue, "larkfield/#")) {
                states.await(Phase.UP);
                RecordedLine.Message kept = States.take(queue, 1).get(0);
                assertEquals("6.8", States.text(kept));
                States.publish(broker.port(), "larkfield/sump", false, "1", "2", "3");
                List<RecordedLine.Message> live = States.take(queue, 3);
                assertEquals(
                        List.of("1", "2", "3"), live.stream().map(States::text).toList());
                assertEquals("larkfield/sump", live.get(0).topic());
                assertEquals(1, live.get(0).qos());
                assertFalse(live.get(0).retain());
                assertEquals(Phase.UP, feed.state().phase());
            }
        }
    }

    @Test
    void saysThatItConnectsAndWaitsUntilItMay() throws Exception {
        CompletableFuture<Void> ready = new CompletableFuture<>();
        try (TestBroker broker = new TestBroker(0);
                MqttFeed feed =
                        states.made(States.broker(broker.url()), queue, "a").start(ready)) {
            assertEquals(
                    "connecting to broker " + broker.url(),
                    states.await(Phase.CONNECTING).detail());
            assertEquals(1, ready.getNumberOfDependents());
            ready.complete(null);
            states.await(Phase.UP);
            assertEquals(Phase.UP, feed.state().phase());
        }
    }

    @Test
    void oneThatIsClosedBeforeItMayNeverConnects() throws Exception {
        CompletableFuture<Void> ready = new CompletableFuture<>();
        MqttFeed feed = states.made(States.broker("mqtt://127.0.0.1:" + freePort()), queue, "a")
                .start(ready);
        feed.close();
        ready.complete(null);
        states.await(Phase.CONNECTING);
        states.await(Phase.STOPPED);
        assertEquals(Phase.STOPPED, feed.state().phase());
    }

    @Test
    void startsWithTheBrokerDownAndComesUpWithIt() throws Exception {
        int port = freePort();
        try (MqttFeed feed = states.feed(States.broker("mqtt://127.0.0.1:" + port), queue, "a")) {
            states.await(Phase.CONNECTING);
            assertEquals(
                    "broker mqtt://127.0.0.1:" + port + " does not take connections; is it running?",
                    states.await(Phase.CONNECTING).detail());
            try (TestBroker broker = new TestBroker(port)) {
                states.await(Phase.UP);
                States.publish(broker.port(), "a", false, "x");
                assertEquals("x", States.text(States.take(queue, 1).get(0)));
            }
            assertEquals(Phase.LOST, states.await(Phase.LOST).phase());
            assertTrue(feed.state().detail().contains("127.0.0.1:" + port));
        }
    }

    @Test
    void subscribesAnewWhenTheBrokerComesBack() throws Exception {
        TestBroker first = new TestBroker(0);
        int port = first.port();
        try (MqttFeed feed = states.feed(States.broker(first.url()), queue, "a", "b")) {
            states.await(Phase.UP);
            first.close();
            states.await(Phase.LOST);
            try (TestBroker second = new TestBroker(port)) {
                states.await(Phase.UP);
                States.publish(port, "b", false, "again");
                assertEquals("again", States.text(States.take(queue, 1).get(0)));
                assertEquals(Phase.UP, feed.state().phase());
                assertEquals(port, second.port());
            }
        }
    }

    @Test
    void whatDoesNotFitIsDroppedAndCounted() throws Exception {
        InboundQueue small = new InboundQueue(2, 1_000_000, 1000);
        try (TestBroker broker = new TestBroker(0);
                MqttFeed feed = states.feed(States.broker(broker.url()), small, "a", "end")) {
            states.await(Phase.UP);
            States.publish(broker.port(), "a", false, "1", "2", "3", "4", "5");
            while (small.counts().received() < 5) {
                Thread.onSpinWait();
            }
            assertEquals(new InboundQueue.Counts(5, 3, 0, 2), small.counts());
            assertEquals(
                    List.of("1", "2"),
                    States.take(small, 2).stream().map(States::text).toList());
            assertEquals(Phase.UP, feed.state().phase());
        }
    }

    @Test
    void saysWhichFileIsMissingAndTakesItWhenItIsThere(@TempDir Path dir) throws Exception {
        Path file = dir.resolve("secret");
        try (TestBroker broker = new TestBroker(0)) {
            BrokerSettings settings = new BrokerSettings(
                    URI.create(broker.url()), new BrokerLogin("ann", file, null, null, null), null, null);
            try (MqttFeed feed = states.feed(settings, queue, "a")) {
                assertEquals(
                        "password-file " + file + " does not exist",
                        states.await(Phase.REFUSED).detail());
                Path part = Files.writeString(dir.resolve("part"), "pw\n");
                Files.move(part, file);
                states.await(Phase.UP);
                assertFalse(feed.state().detail().contains("pw"));
            }
        }
    }

    @Test
    void closingIsQuickAlsoWithoutABroker() throws Exception {
        MqttFeed feed = states.feed(States.broker("mqtt://127.0.0.1:" + freePort()), queue, "a");
        states.await(Phase.CONNECTING);
        long before = System.nanoTime();
        feed.close();
        assertTrue(System.nanoTime() - before < 3_000_000_000L);
        assertEquals(Phase.STOPPED, states.await(Phase.STOPPED).phase());
        feed.close();
    }

    static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }
}
