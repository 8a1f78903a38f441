package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import bywash.ingest.mqtt.MqttFeed;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.recording.RecordingReader;
import bywash.ingest.site.BrokerLogin;
import bywash.ingest.site.BrokerSettings;
import bywash.ingest.site.SiteFile;
import bywash.samples.MakeRecordings;
import bywash.samples.SampleRecordings;
import bywash.tui.demo.LoopbackBroker;
import com.hivemq.client.mqtt.mqtt3.Mqtt3AsyncClient;
import com.hivemq.client.mqtt.mqtt3.Mqtt3Client;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each sample recording published to a broker, taken in by the live feed, the live loop and the journal with the clock of
 * the recording, as fast as it goes: the alarm lines are those of the replay, byte for byte. The broker is the one inside the
 * program; another with {@code -Dreplay.broker=mqtt://127.0.0.1:1883}.
 */
@Timeout(120)
class LiveEqualsReplayTest {
    /** No longer than a watch takes for a time that it slept through. */
    private static final Duration ROUND = Duration.ofSeconds(60);
    /** Of the season; all eight months, with {@code -Dseason.days=250}, take minutes. */
    private static final Duration SEASON = Duration.ofDays(Integer.getInteger("season.days", 21));

    @TempDir
    Path dir;

    private SiteFile site = Larkfield.site();
    private volatile Instant now = Instant.EPOCH;
    private final List<String> live = new ArrayList<>();

    LiveEqualsReplayTest() throws IOException {}

    /** A sample, the site file that goes with it, and how much of it is played. */
    private record Sample(String recording, String site, Duration most) {}

    static Stream<Sample> samples() {
        return Stream.concat(
                Stream.of(SampleRecordings.values()).map(s -> new Sample(s.fileName(), "larkfield.yaml", SEASON)),
                Stream.of(new Sample(MakeRecordings.SEASON, "larkfield-season.yaml", SEASON)));
    }

    @ParameterizedTest
    @MethodSource("samples")
    void givesTheVeryLinesOfTheReplay(Sample sample) throws Exception {
        site = Larkfield.site(sample.site());
        List<RecordedLine> lines = read(sample.recording());
        Instant end = lines.get(0).time().plus(sample.most());
        lines.removeIf(line -> line.time().isAfter(end));
        String given = System.getProperty("replay.broker");
        if (given != null) {
            watch(lines, URI.create(given));
        } else {
            try (LoopbackBroker broker = new LoopbackBroker()) {
                watch(lines, broker.url());
            }
        }
        assertEquals(String.join("\n", replayed(lines)), String.join("\n", live));
        assertFalse(lines.isEmpty());
    }

    private static List<RecordedLine> read(String recording) throws IOException {
        InputStream in = Objects.requireNonNull(
                SampleRecordings.class.getResourceAsStream("/bywash/samples/recordings/" + recording));
        List<RecordedLine> lines = new ArrayList<>();
        try (RecordingReader reader = new RecordingReader(in, (line, what, right) -> {})) {
            for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                lines.add(line);
            }
        }
        return lines;
    }

    private List<String> replayed(List<RecordedLine> lines) {
        List<String> said = new ArrayList<>();
        Pipeline pipeline =
                new Pipeline(site, t -> said.add(AlarmLines.of(site.site().id(), t)), reading -> {});
        lines.forEach(pipeline::accept);
        pipeline.finish();
        return said;
    }

    private void watch(List<RecordedLine> lines, URI broker) throws Exception {
        now = lines.get(0).time();
        Station station = Station.open(site, dir, () -> now);
        station.outlets().add((t, line) -> live.add(line));
        List<String> topics =
                site.bindings().stream().map(b -> b.topic()).distinct().toList();
        CountDownLatch up = new CountDownLatch(1);
        BrokerSettings settings = new BrokerSettings(broker, BrokerLogin.NONE, null, null);
        try (MqttFeed feed = new MqttFeed(settings, topics, station.queue(), () -> now, state -> {
            if (state.up()) {
                up.countDown();
            }
        })) {
            feed.start();
            up.await();
            publish(lines, broker, station);
        }
        now = lines.get(lines.size() - 1).time().plusMillis(2001); // past the time that late readings are waited for
        station.watch().step(List.of());
        station.watch().end();
    }

    private void publish(List<RecordedLine> lines, URI broker, Station station) throws Exception {
        Mqtt3AsyncClient client = Mqtt3Client.builder()
                .identifier("publisher")
                .serverHost(broker.getHost())
                .serverPort(broker.getPort())
                .buildAsync();
        client.connect().get();
        List<Message> batch = new ArrayList<>();
        for (int from = 0; from < lines.size(); ) {
            Instant time = lines.get(from).time();
            for (; now.plus(ROUND).isBefore(time); now = now.plus(ROUND)) {
                station.watch().step(List.of());
            }
            now = time;
            int to = from;
            while (to < lines.size() && lines.get(to).time().equals(time) && lines.get(to) instanceof Message m) {
                client.publishWith().topic(m.topic()).payload(m.payload()).send();
                to++;
            }
            while (batch.size() < to - from) {
                station.queue().drain(batch, 100);
            }
            station.watch().step(batch);
            batch.clear();
            if (to == from && lines.get(from) instanceof RecordedLine.Entry entry) {
                station.watch().enter(entry.entry());
                station.watch().step(List.of());
                to++;
            }
            from = to;
        }
        client.disconnect().get();
    }
}
