package bywash.ingest.mqtt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.mqtt.FeedState.Phase;
import bywash.ingest.site.BrokerLogin;
import bywash.ingest.site.BrokerSettings;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Against a real broker where one is installed. */
@Timeout(90)
class MosquittoTest {
    @TempDir
    Path dir;

    private final States states = new States();
    private final InboundQueue queue = new InboundQueue();

    @Test
    void speaksMqtt5AndComesBackAfterAKill() throws Exception {
        try (Mosquitto broker = new Mosquitto(dir, "allow_anonymous true");
                MqttFeed feed = states.feed(States.broker("mqtt://127.0.0.1:" + broker.port), queue, "a/#")) {
            assertTrue(states.await(Phase.UP).detail().endsWith("MQTT 5"));
            States.publish(broker.port, "a/b", false, "1", "2");
            assertEquals("2", States.text(States.take(queue, 2).get(1)));
            broker.kill();
            states.await(Phase.LOST);
            broker.restart();
            states.await(Phase.UP);
            States.publish(broker.port, "a/b", false, "3");
            assertEquals("3", States.text(States.take(queue, 1).get(0)));
            assertEquals(0, queue.counts().dropped());
            assertEquals(Phase.UP, feed.state().phase());
        }
    }

    /** The broker inside the process delivers kept messages without their flag; this one does as the standard says. */
    @Test
    void flagsWhatTheBrokerHadKept() throws Exception {
        try (Mosquitto broker = new Mosquitto(dir, "allow_anonymous true")) {
            States.publish(broker.port, "a", true, "kept");
            try (MqttFeed feed = states.feed(States.broker("mqtt://127.0.0.1:" + broker.port), queue, "a")) {
                states.await(Phase.UP);
                assertTrue(States.take(queue, 1).get(0).retain());
                States.publish(broker.port, "a", true, "live");
                assertFalse(States.take(queue, 1).get(0).retain());
                assertEquals(Phase.UP, feed.state().phase());
            }
        }
    }

    @Test
    void saysThatThePasswordIsWrongAndComesInWithTheRightOne() throws Exception {
        Path users = dir.resolve("users");
        new ProcessBuilder(
                        Mosquitto.program("mosquitto_passwd").toString(), "-c", "-b", users.toString(), "ann", "right")
                .start()
                .waitFor();
        Path secret = Files.writeString(dir.resolve("secret"), "wrong\n");
        try (Mosquitto broker = new Mosquitto(dir, "allow_anonymous false\npassword_file " + users)) {
            String url = "mqtt://127.0.0.1:" + broker.port;
            BrokerSettings settings =
                    new BrokerSettings(URI.create(url), new BrokerLogin("ann", secret, null, null, null), null, null);
            try (MqttFeed feed = states.feed(settings, queue, "a")) {
                assertEquals(
                        "broker " + url + " refused the password; check username and password-file or password-env",
                        states.await(Phase.REFUSED).detail());
                Files.writeString(secret, "right\n");
                states.await(Phase.UP);
                assertEquals(Phase.UP, feed.state().phase());
            }
            States nobody = new States();
            try (MqttFeed feed = nobody.feed(States.broker(url), queue, "a")) {
                assertEquals(
                        "broker " + url + " wants a login; give username and password-file under broker",
                        nobody.await(Phase.REFUSED).detail());
                assertEquals(Phase.REFUSED, feed.state().phase());
            }
        }
    }

    @Test
    void trustsTheGivenCaAndChecksTheName() throws Exception {
        TestCertificates made = TestCertificates.make(dir, "localhost");
        try (Mosquitto broker = new Mosquitto(dir, "allow_anonymous true\n" + made.mosquittoLines())) {
            BrokerSettings good = settings("mqtts://localhost:" + broker.port, made.ca());
            try (MqttFeed feed = states.feed(good, queue, "a")) {
                states.await(Phase.UP);
                assertEquals(Phase.UP, feed.state().phase());
            }
            refused(settings("mqtts://127.0.0.1:" + broker.port, made.ca()), "for another name; check the host in url");
            refused(settings("mqtts://localhost:" + broker.port, null), "is not trusted; check ca-file");
        }
    }

    @Test
    void refusesACertificateThatHasExpired() throws Exception {
        TestCertificates made = TestCertificates.make(dir, "localhost");
        made.expire(dir, "localhost");
        try (Mosquitto broker = new Mosquitto(dir, "allow_anonymous true\n" + made.mosquittoLines())) {
            refused(
                    settings("mqtts://localhost:" + broker.port, made.ca()),
                    "its certificate has expired or is not valid yet; renew it, or set the clock of this machine");
        }
    }

    @Test
    void showsItsOwnCertificateWhereTheBrokerAsks() throws Exception {
        TestCertificates made = TestCertificates.make(dir, "localhost");
        String asks = "allow_anonymous true\nrequire_certificate true\ncafile " + made.ca() + "\n";
        try (Mosquitto broker = new Mosquitto(dir, asks + made.mosquittoLines())) {
            URI url = URI.create("mqtts://localhost:" + broker.port);
            BrokerLogin own = new BrokerLogin(null, null, null, made.client(), made.clientKey());
            try (MqttFeed feed = states.feed(new BrokerSettings(url, own, made.ca(), null), queue, "a")) {
                states.await(Phase.UP);
                assertEquals(Phase.UP, feed.state().phase());
            }
            BrokerLogin wrong = new BrokerLogin(null, null, null, made.client(), made.client());
            refused(
                    new BrokerSettings(url, wrong, made.ca(), null),
                    "PEM, PKCS #8, without a passphrase (BEGIN PRIVATE KEY)");
            BrokerLogin other = new BrokerLogin(null, null, null, made.client(), made.key());
            States never = new States();
            try (MqttFeed feed = never.feed(new BrokerSettings(url, other, made.ca(), null), queue, "a")) {
                FeedState state = never.await(Phase.REFUSED);
                assertTrue(state.detail().contains("no encrypted connection"), state.detail());
                assertEquals(Phase.REFUSED, feed.state().phase());
            }
        }
    }

    private void refused(BrokerSettings settings, String why) throws Exception {
        States own = new States();
        try (MqttFeed feed = own.feed(settings, queue, "a")) {
            String words = own.await(Phase.REFUSED).detail();
            assertTrue(words.endsWith(why), words);
            assertEquals(Phase.REFUSED, feed.state().phase());
        }
    }

    private static BrokerSettings settings(String url, @Nullable Path ca) {
        return new BrokerSettings(URI.create(url), BrokerLogin.NONE, ca, null);
    }

    @Test
    void saysWhichTopicsTheAccessListForbids() throws Exception {
        Path acl = Files.writeString(dir.resolve("acl"), "topic read a\n");
        try (Mosquitto broker = new Mosquitto(dir, "allow_anonymous true\nacl_file " + acl)) {
            String url = "mqtt://127.0.0.1:" + broker.port;
            try (MqttFeed feed = states.feed(States.broker(url), queue, "a")) {
                assertTrue(states.await(Phase.UP).detail().startsWith("connected"));
                assertEquals(Phase.UP, feed.state().phase());
            }
        }
    }
}
