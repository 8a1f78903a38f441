package bywash.bench.micro;

import bywash.ingest.payload.DecodeSink;
import bywash.ingest.payload.ReadingDecoder;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.recording.RecordingReader;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.rules.engine.Snapshot;
import bywash.rules.event.Reading;
import bywash.samples.SampleRecordings;
import bywash.tui.screen.Picture;
import bywash.tui.screen.ScreenModel;
import bywash.tui.screen.Screens;
import bywash.tui.view.EventLog;
import bywash.tui.view.Frame;
import bywash.tui.view.Losses;
import bywash.tui.view.TrendBuffer;
import bywash.tui.watch.Pipeline;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Decoding, rules, snapshot and drawing on the demo's quiet sample, played once before. */
@State(Scope.Benchmark)
@SuppressWarnings("NullAway.Init") // JMH calls the set-up first
public class HotPaths {
    private static final String SAMPLES = "/bywash/samples/";
    private static final Instant AT = Instant.parse("2026-05-04T06:00:00Z");

    private ReadingDecoder decoder;
    private byte[] number;
    private byte[] senml;
    private Pipeline pipeline;
    private List<Message> quiet;
    private Duration length;
    private int next;
    private Duration later;
    private Frame frame;
    private ScreenModel model;

    /** Counts, so that nothing is optimised away. */
    private static final class Sink implements DecodeSink {
        double sum;

        @Override
        public void reading(Reading reading) {
            sum += reading.value();
        }

        @Override
        public void refused(String probeId, Instant at, String reason) {
            throw new IllegalStateException(reason);
        }

        @Override
        public void unknownTopic(String topic) {
            throw new IllegalStateException(topic);
        }
    }

    @Setup
    public void setUp() throws IOException {
        SiteFile site = site();
        decoder = new ReadingDecoder(site);
        number = "34.1".getBytes(StandardCharsets.US_ASCII);
        senml = "[{\"n\":\"ph\",\"v\":6.7},{\"n\":\"temperature\",\"u\":\"Cel\",\"v\":22.4}]"
                .getBytes(StandardCharsets.US_ASCII);
        pipeline = new Pipeline(site, t -> {}, r -> {});
        quiet = quiet();
        quiet.forEach(pipeline::accept);
        length = Duration.between(
                        quiet.get(0).time(), quiet.get(quiet.size() - 1).time())
                .plusSeconds(10);
        later = length;
        Snapshot snapshot = pipeline.snapshot();
        frame = new Frame(snapshot, new TrendBuffer(1), new EventLog(), AT, Losses.NONE, Set.of(), "");
        model = new ScreenModel();
    }

    @Benchmark
    public double decodeNumber() {
        Sink sink = new Sink();
        decoder.decode(AT, "larkfield/sump/level", number, false, sink);
        return sink.sum;
    }

    @Benchmark
    public double decodeSenMlOfTwo() {
        Sink sink = new Sink();
        decoder.decode(AT, "larkfield/fish", senml, false, sink);
        return sink.sum;
    }

    @Benchmark
    public long oneLineThroughTheRules() {
        Message m = quiet.get(next);
        pipeline.accept(new Message(m.time().plus(later), m.topic(), m.payload(), m.qos(), m.retain()));
        if (++next == quiet.size()) {
            next = 0;
            later = later.plus(length);
        }
        return pipeline.messages();
    }

    @Benchmark
    public Snapshot snapshot() {
        return pipeline.snapshot();
    }

    @Benchmark
    public Picture drawOverview() {
        return Screens.draw(frame, model, true, 80, 24);
    }

    private static SiteFile site() throws IOException {
        String text = new String(resource("sites/larkfield.yaml").readAllBytes(), StandardCharsets.UTF_8);
        if (SiteFileReader.read(text, "larkfield.yaml") instanceof SiteFileResult.Good good) {
            return good.siteFile();
        }
        throw new IllegalStateException("the demo's site is faulty");
    }

    private static List<Message> quiet() throws IOException {
        List<Message> messages = new ArrayList<>();
        try (RecordingReader reader = new RecordingReader(
                resource("recordings/" + SampleRecordings.QUIET_SIPHONS.fileName()), (line, what, right) -> {})) {
            for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                if (line instanceof Message message) {
                    messages.add(message);
                }
            }
        }
        return messages;
    }

    private static InputStream resource(String name) {
        InputStream in = SampleRecordings.class.getResourceAsStream(SAMPLES + name);
        if (in == null) {
            throw new IllegalStateException(name + " is missing");
        }
        return in;
    }
}
