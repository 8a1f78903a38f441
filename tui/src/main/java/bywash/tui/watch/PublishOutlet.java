package bywash.tui.watch;

import bywash.ingest.mqtt.RetainedPublisher;
import bywash.ingest.mqtt.RetainedPublisher.Retained;
import bywash.ingest.recording.IsoTime;
import bywash.ingest.site.BrokerSettings;
import bywash.ingest.text.PlainText;
import bywash.rules.alarm.AlarmMemory;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.alarm.AlarmView;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/**
 * Publishes alarms over MQTT, all retained.
 *
 * <pre>
 *   PREFIX/SITE/alarm/ALARM/SUBJECT   the alarm line of its last change; what an earlier record left there is {@link EarlierRecord}'s
 *   PREFIX/SITE/watch                 {"time":...,"site":...,"state":"running","next_within_s":60,"alarms":{STATE:n,...}}
 *                                     with "trouble" where the watch has something to say of itself, such as a full disk;
 *                                     each 30 s while the watch's loop runs; "stopped" when it was ended;
 *                                     {"site":...,"state":"lost"} from the broker when it died
 * </pre>
 */
public final class PublishOutlet implements Outlets.Outlet, AutoCloseable {
    private static final Duration BEAT = Duration.ofSeconds(30);
    private static final int LONGEST = 200;
    private static final ObjectMapper JSON = new ObjectMapper();

    private final String site;
    private final String topics;
    private final LiveWatch watch;
    private final InstantSource clock;
    private final RetainedPublisher publisher;
    private final EarlierRecord earlier;
    private final ScheduledExecutorService beat = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "heartbeat");
        thread.setDaemon(true);
        return thread;
    });

    /** @param prefix of all topics; no wildcard, no stroke at its end */
    public PublishOutlet(BrokerSettings broker, String site, String prefix, LiveWatch watch, InstantSource clock) {
        this.site = site;
        this.topics = prefix + "/" + site;
        this.watch = watch;
        this.clock = clock;
        String lost =
                JSON.createObjectNode().put("site", site).put("state", "lost").toString();
        String id = "bywash-" + site + "-alarms-" + UUID.randomUUID().toString().substring(0, 8);
        this.publisher = new RetainedPublisher(broker, id, new Retained(topics + "/watch", lost));
        this.earlier = new EarlierRecord(site, topics + "/alarm/", clock);
        publisher.leftovers(topics + "/alarm/+/+", earlier::judge);
    }

    /** Begins with what stood in the journal, so that the broker holds nothing that is over. */
    public PublishOutlet start(Restart restart) {
        for (AlarmMemory m : restart.kept()) {
            Instant at = Objects.requireNonNullElse(m.raisedAt(), clock.instant());
            accept(
                    new AlarmTransition(
                            at,
                            m.kind(),
                            m.subject(),
                            m.state(),
                            m.kind().priority(),
                            m.incident(),
                            m.message(),
                            Map.of()),
                    "");
        }
        publisher.start();
        beat.scheduleAtFixedRate(this::running, 0, BEAT.toMillis(), TimeUnit.MILLISECONDS);
        return this;
    }

    @Override
    public void accept(AlarmTransition t, String line) {
        String topic = topics + "/alarm/" + t.kind().word() + "/"
                + PlainText.of(t.subject(), LONGEST).replaceAll("[#+]", "_");
        earlier.known(topic);
        publisher.put(new Retained(topic, line.isEmpty() ? AlarmLines.of(site, t) : line));
    }

    /** What stands in the way, in words. */
    public String trouble() {
        return publisher.trouble();
    }

    /** Only while the loop itself has come by lately: a hung watch must look dead from outside. */
    private void running() {
        FrameSource latest = watch.latest();
        Instant now = clock.instant();
        if (Duration.between(latest.now(), now).compareTo(BEAT) < 0) {
            publisher.put(new Retained(topics + "/watch", state("running", latest, now)));
            earlier.over().forEach(publisher::clear);
        }
    }

    private String state(String state, FrameSource latest, Instant now) {
        ObjectNode node = JSON.createObjectNode();
        node.put("time", IsoTime.format(now)).put("site", site).put("state", state);
        if (state.equals("running")) {
            node.put("next_within_s", 2 * BEAT.toSeconds());
        }
        if (!latest.note().isEmpty()) {
            node.put("trouble", latest.note());
        }
        ObjectNode alarms = node.putObject("alarms");
        for (AlarmState each : AlarmState.values()) {
            long count = latest.snapshot().alarms().stream()
                    .map(AlarmView::state)
                    .filter(each::equals)
                    .count();
            if (count > 0) {
                alarms.put(each.word(), count);
            }
        }
        return node.toString();
    }

    @Override
    public void close() {
        beat.shutdownNow();
        publisher.put(new Retained(topics + "/watch", state("stopped", watch.latest(), clock.instant())));
        publisher.close();
    }
}
