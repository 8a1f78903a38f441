package bywash.ingest.mqtt;

import bywash.ingest.site.BrokerSettings;
import com.hivemq.client.mqtt.MqttClient;
import com.hivemq.client.mqtt.datatypes.MqttQos;
import com.hivemq.client.mqtt.mqtt3.Mqtt3AsyncClient;
import com.hivemq.client.mqtt.mqtt3.message.auth.Mqtt3SimpleAuth;
import com.hivemq.client.mqtt.mqtt3.message.connect.Mqtt3ConnectBuilder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps retained messages at the broker over a connection of its own, in MQTT 3.1.1, which every broker speaks. Of each topic
 * the latest is sent, at QoS 1 and as long as it takes; whoever gives one never waits. A last will tells of our end where we
 * cannot do so ourselves. What the broker holds on topics of ours that we know nothing of is left over from another time: its
 * judge says what becomes of it.
 */
public final class RetainedPublisher implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(RetainedPublisher.class);
    private static final int MOST_WAITING = 1000;
    private static final long PATIENCE_S = 10;

    static {
        PlainNetty.ask();
    }

    /** A retained message. */
    public record Retained(String topic, String payload) {
        private byte[] bytes() {
            return payload.getBytes(StandardCharsets.UTF_8);
        }
    }

    /** Decides what becomes of a message that the broker holds and that was not given here. Called on a thread of the client. */
    @FunctionalInterface
    public interface Leftovers {
        /** What the topic holds from now on, an empty payload to hold nothing; null to leave it as it is. */
        @Nullable
        Retained judge(Retained found);
    }

    private final BrokerSettings broker;
    private final String clientId;
    private final Retained will;
    private final Backoff backoff;
    private String leftoverFilter = "";
    private Leftovers leftovers = found -> null;
    private final Map<String, Retained> waiting = new LinkedHashMap<>();
    /** All that topics hold, to be said again: a broker may forget it with a restart. */
    private final Map<String, Retained> held = new LinkedHashMap<>();

    private final Thread thread = new Thread(this::run, "bywash-publish");
    private @Nullable Mqtt3AsyncClient client;
    /** No pause is kept, and nothing is waited for, once this is down. */
    private final CountDownLatch ending = new CountDownLatch(1);

    private volatile String trouble = "";

    /** @param will published by the broker when we are gone without a word */
    public RetainedPublisher(BrokerSettings broker, String clientId, Retained will) {
        this(broker, clientId, will, Backoff.USUAL);
    }

    RetainedPublisher(BrokerSettings broker, String clientId, Retained will, Backoff backoff) {
        this.backoff = backoff;
        this.broker = broker;
        this.clientId = clientId;
        this.will = will;
        thread.setDaemon(true);
    }

    /** Before the start: who judges what is left over, and on which topics. */
    public RetainedPublisher leftovers(String topicFilter, Leftovers judge) {
        leftoverFilter = topicFilter;
        leftovers = judge;
        return this;
    }

    public RetainedPublisher start() {
        thread.start();
        return this;
    }

    /** Any thread: this is what the topic holds from now on. Never waits. */
    public void put(Retained message) {
        synchronized (waiting) {
            waiting.remove(message.topic());
            waiting.put(message.topic(), message);
            held.remove(message.topic());
            if (!message.payload().isEmpty()) {
                held.put(message.topic(), message);
            }
            if (held.size() > MOST_WAITING) {
                held.remove(held.keySet().iterator().next());
            }
            if (waiting.size() > MOST_WAITING) {
                waiting.remove(waiting.keySet().iterator().next());
            }
            waiting.notifyAll();
        }
    }

    /** Any thread: the topic holds nothing from now on, unless something else than this was given meanwhile. */
    public void clear(Retained message) {
        synchronized (waiting) {
            if (message.equals(held.get(message.topic()))) {
                put(new Retained(message.topic(), ""));
            }
        }
    }

    /** What the broker had of a topic when we came. */
    private void found(String topic, byte[] payload) {
        synchronized (waiting) {
            if (held.containsKey(topic) || waiting.containsKey(topic)) {
                return;
            }
            Retained now = leftovers.judge(new Retained(topic, new String(payload, StandardCharsets.UTF_8)));
            if (now != null) {
                put(now);
            }
        }
    }

    /** What stands in the way, in words; empty while all goes well. */
    public String trouble() {
        return trouble;
    }

    private void run() {
        int failures = 0;
        while (true) {
            Retained next = next();
            if (next == null) {
                return;
            }
            boolean last = ended(); // what fails after the end is not tried again
            try {
                send(next);
                failures = 0;
                trouble = "";
            } catch (InterruptedException e) {
                return;
            } catch (ExecutionException | TimeoutException | FileFault | RuntimeException e) {
                failures++;
                LOG.debug("not published", e);
                trouble = "alarms are not published: "
                        + Trouble.of(cause(e), setup()).words();
                putBack(next);
                if (last || !rest(backoff.after(failures))) {
                    return;
                }
            }
        }
    }

    private static Throwable cause(Exception e) {
        return e instanceof ExecutionException && e.getCause() != null ? e.getCause() : e;
    }

    private FeedSetup setup() {
        return new FeedSetup(broker, clientId, java.util.List.of(will.topic()));
    }

    private @Nullable Retained next() {
        synchronized (waiting) {
            while (waiting.isEmpty()) {
                if (ended()) {
                    return null;
                }
                try {
                    waiting.wait();
                } catch (InterruptedException e) {
                    return null;
                }
            }
            return waiting.remove(waiting.keySet().iterator().next());
        }
    }

    /** Unless there is a newer one of its topic. */
    private void putBack(Retained message) {
        synchronized (waiting) {
            waiting.putIfAbsent(message.topic(), message);
        }
    }

    private boolean ended() {
        return ending.getCount() == 0;
    }

    /** As long as said, or until the end, whichever comes first; whether to go on. */
    private boolean rest(Duration pause) {
        try {
            if (ending.await(pause.toMillis(), TimeUnit.MILLISECONDS)) {
                LOG.debug("the end: one more try at once");
            }
            return true;
        } catch (InterruptedException e) {
            return false;
        }
    }

    private void send(Retained message) throws InterruptedException, ExecutionException, TimeoutException, FileFault {
        Mqtt3AsyncClient open = client;
        if (open == null || !open.getState().isConnected()) {
            open = connect();
            client = open;
        }
        await(open.publishWith()
                .topic(message.topic())
                .payload(message.bytes())
                .qos(MqttQos.AT_LEAST_ONCE)
                .retain(true)
                .send());
    }

    private static <T> T await(CompletableFuture<T> answer)
            throws InterruptedException, ExecutionException, TimeoutException {
        return answer.get(PATIENCE_S, TimeUnit.SECONDS);
    }

    private Mqtt3AsyncClient connect() throws InterruptedException, ExecutionException, TimeoutException, FileFault {
        Login login = Login.of(broker);
        Mqtt3AsyncClient fresh = MqttClient.builder()
                .useMqttVersion3()
                .identifier(clientId)
                .transportConfig(Link.transport(broker))
                .buildAsync();
        Mqtt3ConnectBuilder.Send<?> options =
                fresh.connectWith().cleanSession(true).keepAlive(Link.KEEP_ALIVE);
        options = options.willPublish()
                .topic(will.topic())
                .payload(will.bytes())
                .qos(MqttQos.AT_LEAST_ONCE)
                .retain(true)
                .applyWillPublish();
        if (login.username != null) {
            options = options.simpleAuth(auth(login.username, login.password));
        }
        await((CompletableFuture<?>) options.send());
        synchronized (waiting) {
            held.forEach(waiting::putIfAbsent);
        }
        lookForLeftovers(fresh);
        return fresh;
    }

    /** A broker that does not let us read leaves them as they are: publishing goes on. */
    private void lookForLeftovers(Mqtt3AsyncClient fresh) throws InterruptedException, TimeoutException {
        if (leftoverFilter.isEmpty()) {
            return;
        }
        try {
            await(fresh.subscribeWith()
                    .topicFilter(leftoverFilter)
                    .qos(MqttQos.AT_LEAST_ONCE)
                    .callback(m -> {
                        if (m.isRetain()) {
                            found(m.getTopic().toString(), m.getPayloadAsBytes());
                        }
                    })
                    .send());
        } catch (ExecutionException e) {
            LOG.info("what {} holds cannot be read: {}", leftoverFilter, e.getCause());
        }
    }

    private static Mqtt3SimpleAuth auth(String username, byte @Nullable [] password) {
        return password == null
                ? Mqtt3SimpleAuth.builder().username(username).build()
                : Mqtt3SimpleAuth.builder()
                        .username(username)
                        .password(password)
                        .build();
    }

    /** Sends what waits, each once more and at once, for a second or two at most, and says goodbye, so that the will is not spoken. */
    @Override
    public void close() {
        ending.countDown();
        synchronized (waiting) {
            waiting.notifyAll();
        }
        try {
            thread.join(2000);
            thread.interrupt();
            thread.join(500);
            Mqtt3AsyncClient open = client;
            if (open != null && open.getState().isConnected()) {
                open.disconnect().get(1, TimeUnit.SECONDS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (ExecutionException | TimeoutException e) {
            LOG.debug("no goodbye", e);
        }
    }
}
