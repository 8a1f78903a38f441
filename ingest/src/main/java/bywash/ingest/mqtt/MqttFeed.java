package bywash.ingest.mqtt;

import bywash.ingest.mqtt.FeedState.Phase;
import bywash.ingest.site.BrokerSettings;
import java.time.Duration;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The live feed. Connects, subscribes, hands messages over, and keeps trying until closed. MQTT 5 first; where the broker
 * cannot, 3.1.1. All that decides runs on one thread of its own; the client's threads only put messages into the queue.
 */
public final class MqttFeed implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(MqttFeed.class);
    private static final Duration GOODBYE = Duration.ofSeconds(1);

    static {
        PlainNetty.ask();
    }

    private final FeedSetup setup;
    private final InboundQueue queue;
    private final InstantSource clock;
    private final Backoff backoff;
    private final Consumer<FeedState> listener;
    private final ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread t = new Thread(task, "bywash-mqtt");
        t.setDaemon(true);
        return t;
    });

    private volatile FeedState state;
    private Link.@Nullable Version triedOther;
    private Link.Version version = Link.Version.V5;
    private @Nullable Link link;
    private boolean everUp;
    private int failures;

    /** As the watch wants it: the usual backoff, and a client id that no other watch has. */
    public MqttFeed(
            BrokerSettings broker,
            List<String> topics,
            InboundQueue queue,
            InstantSource clock,
            Consumer<FeedState> listener) {
        this(
                FeedSetup.of(broker, "watch", UUID.randomUUID().toString().substring(0, 8), topics),
                queue,
                clock,
                Backoff.USUAL,
                listener);
    }

    /**
     * Makes the feed; {@link #start} begins it.
     *
     * @param clock gives the times of receipt
     * @param listener hears each new state, on the feed's thread; must not block
     */
    public MqttFeed(
            FeedSetup setup, InboundQueue queue, InstantSource clock, Backoff backoff, Consumer<FeedState> listener) {
        this.setup = setup;
        this.queue = queue;
        this.clock = clock;
        this.backoff = backoff;
        this.listener = listener;
        this.state = new FeedState(Phase.CONNECTING, "connecting to broker " + shown(), clock.instant());
    }

    /** Begins to connect, and returns at once. */
    public MqttFeed start() {
        return start(CompletableFuture.completedFuture(null));
    }

    /**
     * Says at once that it connects, and begins to.
     *
     * @param ready it begins when this is complete
     */
    public MqttFeed start(CompletionStage<?> ready) {
        listener.accept(state);
        ready.thenRunAsync(this::attempt, thread);
        return this;
    }

    public FeedState state() {
        return state;
    }

    private String shown() {
        return Endpoint.of(setup.broker().url()).shown();
    }

    private void attempt() {
        if (state.phase() == Phase.STOPPED) {
            return;
        }
        try {
            Link next = Link.open(version, setup, new Link.Ends(queue::offer, clock, this::endedElsewhere));
            link = next;
            next.connect()
                    .whenComplete((ok, e) -> onThread(() -> {
                        if (e == null) {
                            subscribe(next);
                        } else {
                            ended(next, e);
                        }
                    }));
        } catch (FileFault e) {
            down(Trouble.of(e, setup));
        } catch (IllegalArgumentException e) {
            down(new Trouble("the client id or the user name is not fit for MQTT: " + e.getMessage(), true, false));
        }
    }

    private void subscribe(Link on) {
        if (link != on) {
            return;
        }
        CompletableFuture<List<Integer>> answer;
        try {
            answer = on.subscribe(setup.topics());
        } catch (IllegalArgumentException e) {
            answer = CompletableFuture.failedFuture(new FileFault("a topic is no MQTT topic: " + e.getMessage()));
        }
        answer.whenComplete((codes, e) -> onThread(() -> {
            if (link != on) {
                return;
            }
            if (e != null) {
                goodbye(on);
                down(Trouble.of(e, setup));
            } else {
                subscribed(on, codes);
            }
        }));
    }

    private void subscribed(Link on, List<Integer> codes) {
        List<String> refused = new ArrayList<>();
        for (int i = 0; i < setup.topics().size(); i++) {
            if (i >= codes.size() || codes.get(i) >= 128) {
                refused.add(setup.topics().get(i));
            }
        }
        String words = "broker " + shown() + " refused the subscription to " + String.join(", ", refused)
                + "; check its access list";
        if (refused.size() == setup.topics().size()) {
            goodbye(on);
            down(new Trouble(words, true, false));
            return;
        }
        failures = 0;
        triedOther = null;
        everUp = true;
        move(Phase.UP, refused.isEmpty() ? "connected to broker " + shown() + ", " + version.words : words);
    }

    private void endedElsewhere(Link which, Throwable cause) {
        onThread(() -> ended(which, cause));
    }

    private void ended(Link which, Throwable cause) {
        if (link != which || state.phase() == Phase.STOPPED) {
            return;
        }
        LOG.debug("link ended", cause);
        Trouble trouble = Trouble.of(cause, setup);
        if (trouble.version() && state.phase() != Phase.UP && triedOther == null) {
            triedOther = version;
            version = version.other();
            attempt();
            return;
        }
        down(trouble);
    }

    private void down(Trouble trouble) {
        link = null;
        failures++;
        if (triedOther != null) {
            version = Link.Version.V5;
            triedOther = null;
        }
        Phase phase = trouble.refusal() ? Phase.REFUSED : everUp ? Phase.LOST : Phase.CONNECTING;
        move(phase, trouble.words());
        thread.schedule(this::attempt, backoff.after(failures).toMillis(), TimeUnit.MILLISECONDS);
    }

    private void move(Phase phase, String words) {
        FeedState before = state;
        if (before.phase() == Phase.STOPPED
                || (before.phase() == phase && before.detail().equals(words))) {
            return;
        }
        state = new FeedState(phase, words, before.phase() == phase ? before.since() : clock.instant());
        LOG.info("{}: {}", phase, words);
        listener.accept(state);
    }

    private void onThread(Runnable task) {
        try {
            thread.execute(task);
        } catch (RejectedExecutionException e) {
            LOG.debug("closed meanwhile");
        }
    }

    private void goodbye(Link on) {
        link = null;
        on.disconnect().whenComplete((ok, e) -> LOG.debug("disconnected"));
    }

    /** Says goodbye to the broker and stops, within a second or so. */
    @Override
    public void close() {
        try {
            thread.submit(this::stop).get(GOODBYE.toMillis() * 2, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (ExecutionException | TimeoutException e) {
            LOG.debug("not closed in time", e);
        } catch (RejectedExecutionException e) {
            LOG.debug("closed before");
        }
        thread.shutdownNow();
    }

    private void stop() {
        Link last = link;
        move(Phase.STOPPED, "stopped");
        link = null;
        if (last != null) {
            try {
                last.disconnect().get(GOODBYE.toMillis(), TimeUnit.MILLISECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            } catch (ExecutionException | TimeoutException e) {
                LOG.debug("no goodbye", e);
            }
        }
    }
}
