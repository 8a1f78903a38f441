package bywash.ingest.mqtt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.mqtt.FeedState.Phase;
import bywash.ingest.site.BrokerLogin;
import bywash.ingest.site.BrokerSettings;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** MQTT over an encrypted web socket: the certificate and the name are checked as over plain TLS. */
@Timeout(90)
class SecureWebSocketTest {
    @TempDir
    Path dir;

    private final InboundQueue queue = new InboundQueue();

    private static BrokerSettings settings(String url, Path ca) {
        return new BrokerSettings(URI.create(url), BrokerLogin.NONE, ca, null);
    }

    @Test
    void receivesWhereTheCertificateIsGoodAndNowhereElse() throws Exception {
        TestCertificates made = TestCertificates.make(dir, "localhost");
        TestCertificates strange =
                TestCertificates.make(java.nio.file.Files.createDirectory(dir.resolve("other")), "x");
        try (TestBroker broker = new TestBroker(0, made.serverStore(dir));
                MqttPublisher publisher = new MqttPublisher(URI.create(broker.url()))) {
            States good = new States();
            try (MqttFeed feed = good.feed(settings(broker.secureWebSocketUrl("localhost"), made.ca()), queue, "a")) {
                good.await(Phase.UP);
                publisher.publish("a", "41.3".getBytes(StandardCharsets.UTF_8));
                assertEquals("41.3", States.text(States.take(queue, 1).get(0)));
                assertTrue(
                        feed.state().detail().contains("wss://localhost"),
                        feed.state().detail());
            }
            refused(settings(broker.secureWebSocketUrl("127.0.0.1"), made.ca()), "for another name");
            refused(settings(broker.secureWebSocketUrl("localhost"), strange.ca()), "is not trusted; check ca-file");
        }
    }

    private void refused(BrokerSettings settings, String why) throws Exception {
        States states = new States();
        try (MqttFeed feed = states.feed(settings, queue, "a")) {
            FeedState state = states.await(Phase.REFUSED);
            assertTrue(state.detail().contains(why), state.detail());
            assertEquals(Phase.REFUSED, feed.state().phase());
        }
    }
}
