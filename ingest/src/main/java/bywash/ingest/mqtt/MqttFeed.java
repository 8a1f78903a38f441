package bywash.ingest.mqtt;

import bywash.ingest.mqtt.FeedState.Phase;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.BrokerSettings;
import com.hivemq.client.mqtt.MqttClient;
import com.hivemq.client.mqtt.MqttClientBuilder;
import com.hivemq.client.mqtt.exceptions.ConnectionFailedException;
import com.hivemq.client.mqtt.mqtt3.exceptions.Mqtt3ConnAckException;
import com.hivemq.client.mqtt.mqtt5.exceptions.Mqtt5ConnAckException;
import com.hivemq.client.mqtt.mqtt5.message.connect.connack.Mqtt5ConnAckReasonCode;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.time.InstantSource;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The live feed. Connects with MQTT 5, with 3.1.1 where the broker has no 5, keeps trying from 1 s up to 30 s apart,
 * and subscribes anew on each connection. Nothing here blocks the client's threads.
 */
public final class MqttFeed implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(MqttFeed.class);
    private static final long FIRST_WAIT_MS = 1000;
    private static final long LONGEST_WAIT_MS = 30_000;

    private final BrokerSettings broker;
    private final List<String> topics;
    private final InboundQueue queue;
    private final InstantSource clock;
    private final Consumer<FeedState> listener;
    private final ScheduledExecutorService timer = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "feed");
        thread.setDaemon(true);
        return thread;
    });
    private boolean oldProtocol;
    private long waitMs = FIRST_WAIT_MS;
    private boolean closed;
    private @Nullable ClientLink link;
    private volatile FeedState state;

    public MqttFeed(
            BrokerSettings broker,
            List<String> topics,
            InboundQueue queue,
            InstantSource clock,
            Consumer<FeedState> listener) {
        this.broker = broker;
        this.topics = List.copyOf(topics);
        this.queue = queue;
        this.clock = clock;
        this.listener = listener;
        this.state = new FeedState(Phase.CONNECTING, "connecting to " + broker.url());
    }

    public void start() {
        timer.execute(this::connect);
    }

    public FeedState state() {
        return state;
    }

    private void say(Phase phase, String detail) {
        state = new FeedState(phase, detail);
        LOG.info("{}: {}", phase, detail);
        listener.accept(state);
    }

    private void connect() {
        if (closed) {
            return;
        }
        if (state.phase() == Phase.CONNECTING) {
            listener.accept(state);
        }
        ClientLink opened;
        try {
            opened = open();
        } catch (IOException e) {
            say(Phase.REFUSED, String.valueOf(e.getMessage()));
            again();
            return;
        }
        link = opened;
        opened.open(topics).whenCompleteAsync((done, fault) -> settled(opened, fault), timer);
    }

    private void settled(ClientLink opened, @Nullable Throwable fault) {
        if (closed || link != opened) {
            return;
        }
        if (fault == null) {
            waitMs = FIRST_WAIT_MS;
            say(Phase.UP, "connected to " + broker.url() + (oldProtocol ? " (MQTT 3.1.1)" : " (MQTT 5)"));
            return;
        }
        Throwable cause = fault instanceof CompletionException && fault.getCause() != null ? fault.getCause() : fault;
        opened.close();
        if (!oldProtocol && noMqtt5(cause)) {
            oldProtocol = true;
            connect();
            return;
        }
        FeedState words = FaultWords.of(broker.url(), cause);
        say(words.phase(), words.detail());
        oldProtocol = false;
        again();
    }

    private static boolean noMqtt5(Throwable cause) {
        if (cause instanceof Mqtt5ConnAckException refused) {
            return refused.getMqttMessage().getReasonCode() == Mqtt5ConnAckReasonCode.UNSUPPORTED_PROTOCOL_VERSION;
        }
        return !(cause instanceof ConnectionFailedException)
                && !(cause instanceof Mqtt3ConnAckException)
                && !(cause instanceof SubscriptionRefused);
    }

    private void lost(ClientLink which, String why) {
        timer.execute(() -> {
            if (!closed && link == which && state.phase() == Phase.UP) {
                say(Phase.LOST, "lost " + broker.url() + ": " + why + "; trying again");
                which.close();
                again();
            }
        });
    }

    private void again() {
        long wait = waitMs;
        waitMs = Math.min(LONGEST_WAIT_MS, waitMs * 2);
        timer.schedule(this::connect, wait, TimeUnit.MILLISECONDS);
    }

    private ClientLink open() throws IOException {
        URI url = broker.url();
        String scheme = url.getScheme().toLowerCase(Locale.ROOT);
        boolean secure = scheme.equals("mqtts") || scheme.equals("wss");
        boolean web = scheme.startsWith("ws");
        int port = url.getPort() > 0 ? url.getPort() : web ? secure ? 443 : 80 : secure ? 8883 : 1883;
        String id = broker.clientId() != null
                ? broker.clientId()
                : "bywash-" + UUID.randomUUID().toString().substring(0, 8);
        MqttClientBuilder builder =
                MqttClient.builder().identifier(id).serverHost(url.getHost()).serverPort(port);
        if (secure) {
            builder = builder.sslConfig(Tls.of(broker));
        }
        if (web) {
            String path = url.getPath() == null || url.getPath().isEmpty()
                    ? "mqtt"
                    : url.getPath().substring(1);
            builder = builder.webSocketConfig().serverPath(path).applyWebSocketConfig();
        }
        byte[] password = password();
        Links.Receiver receiver =
                (topic, payload, qos, retain) -> queue.offer(new Message(clock.instant(), topic, payload, qos, retain));
        return oldProtocol
                ? Links.version3(builder, broker.username(), password, receiver, this::lost)
                : Links.version5(builder, broker.username(), password, receiver, this::lost);
    }

    private byte @Nullable [] password() throws IOException {
        if (broker.passwordFile() == null) {
            return null;
        }
        try (var lines = Files.lines(broker.passwordFile())) {
            return lines.findFirst().orElse("").strip().getBytes(java.nio.charset.StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IOException(
                    "password-file " + broker.passwordFile() + " cannot be read; make it a file with the password", e);
        }
    }

    @Override
    public void close() {
        timer.execute(() -> {
            closed = true;
            if (link != null) {
                link.close();
            }
            say(Phase.STOPPED, "stopped");
        });
        timer.shutdown();
    }
}
