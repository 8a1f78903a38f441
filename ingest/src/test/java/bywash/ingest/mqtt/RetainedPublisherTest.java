package bywash.ingest.mqtt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.mqtt.FeedState.Phase;
import bywash.ingest.mqtt.RetainedPublisher.Retained;
import java.nio.file.Path;
import java.time.Duration;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Retained messages at a real broker, where one is installed. */
@Timeout(60)
class RetainedPublisherTest {
    private static final Retained WILL = new Retained("w/watch", "lost");

    @TempDir
    Path dir;

    /** What a newcomer is given, as topic and payload. */
    private static TreeMap<String, String> kept(Mosquitto broker, int count) throws Exception {
        InboundQueue queue = new InboundQueue();
        States states = new States();
        try (MqttFeed feed = states.feed(States.broker("mqtt://127.0.0.1:" + broker.port), queue, "w/#")) {
            states.await(Phase.UP);
            TreeMap<String, String> all = new TreeMap<>();
            States.take(queue, count).forEach(m -> all.put(m.topic(), States.text(m)));
            assertTrue(feed.state().up());
            return all;
        }
    }

    @Test
    void saysAllAgainToABrokerThatForgotAndKeepsTheLatestOfEachTopic() throws Exception {
        try (Mosquitto broker = new Mosquitto(dir, "allow_anonymous true");
                RetainedPublisher publisher =
                        new RetainedPublisher(States.broker("mqtt://127.0.0.1:" + broker.port), "test", WILL)) {
            publisher.put(new Retained("w/a", "1"));
            publisher.put(new Retained("w/a", "2"));
            publisher.start();
            while (!kept(broker, 1).toString().equals("{w/a=2}")) {
                Thread.onSpinWait();
            }
            broker.kill();
            broker.restart();
            publisher.put(new Retained("w/b", "3"));
            while (!kept(broker, 2).toString().equals("{w/a=2, w/b=3}")) {
                Thread.onSpinWait();
            }
            assertEquals("", publisher.trouble());
        }
    }

    @Test
    void theEndWaitsForNoPauseAndSendsWhatABrokerTakesAgain() throws Exception {
        Backoff aDay = new Backoff(Duration.ofDays(1), Duration.ofDays(1));
        try (Mosquitto broker = new Mosquitto(dir, "allow_anonymous true")) {
            broker.kill();
            RetainedPublisher publisher =
                    new RetainedPublisher(States.broker("mqtt://127.0.0.1:" + broker.port), "test", WILL, aDay).start();
            publisher.put(new Retained("w/a", "1"));
            while (publisher.trouble().isEmpty()) {
                Thread.onSpinWait();
            }
            broker.restart();
            publisher.put(new Retained("w/watch", "stopped"));
            publisher.close();
            assertEquals("{w/a=1, w/watch=stopped}", kept(broker, 2).toString());
        }
    }

    /** After its journal was lost a publisher knows nothing of what it left at the broker. */
    @Test
    void judgesWhatIsLeftOverAndNothingThatItWasGiven() throws Exception {
        try (Mosquitto broker = new Mosquitto(dir, "allow_anonymous true");
                RetainedPublisher publisher =
                        new RetainedPublisher(States.broker("mqtt://127.0.0.1:" + broker.port), "test", WILL)) {
            States.publish(broker.port, "w/alarm/a", true, "stood");
            States.publish(broker.port, "w/alarm/b", true, "over");
            States.publish(broker.port, "w/alarm/c", true, "old");
            States.publish(broker.port, "w/alarm/d", true, "foreign");
            publisher.leftovers("w/alarm/+", found -> switch (found.payload()) {
                case "stood" -> new Retained(found.topic(), "of an earlier record");
                case "over", "old" -> new Retained(found.topic(), "");
                default -> null;
            });
            publisher.put(new Retained("w/alarm/c", "known"));
            publisher.start();
            String right = "{w/alarm/a=of an earlier record, w/alarm/c=known, w/alarm/d=foreign}";
            while (!kept(broker, 3).toString().equals(right)) {
                Thread.onSpinWait();
            }
            publisher.put(new Retained("w/alarm/c", "raised"));
            publisher.clear(new Retained("w/alarm/c", "known")); // something else is there by now
            publisher.clear(new Retained("w/alarm/a", "of an earlier record"));
            while (!kept(broker, 2).toString().equals("{w/alarm/c=raised, w/alarm/d=foreign}")) {
                Thread.onSpinWait();
            }
            assertEquals("", publisher.trouble());
        }
    }
}
