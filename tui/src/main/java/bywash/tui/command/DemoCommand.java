package bywash.tui.command;

import bywash.ingest.mqtt.InboundQueue;
import bywash.ingest.mqtt.MqttFeed;
import bywash.ingest.mqtt.MqttPublisher;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.BrokerSettings;
import bywash.ingest.site.ProbeBinding;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.samples.demo.DemoFeed;
import bywash.tui.demo.LoopbackBroker;
import bywash.tui.screen.Entries;
import bywash.tui.view.EventLog;
import bywash.tui.view.TrendBuffer;
import bywash.tui.watch.LiveWatch;
import bywash.tui.watch.PacedClock;
import bywash.tui.watch.Pipeline;
import bywash.tui.watch.Station;
import bywash.tui.watch.WatchRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The built-in invented site over a real publish and subscribe. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = "Plays an invented site through a broker of its own: quiet water, a top-up, a valve left open.",
        footer = {"", "Exit codes: 0 good, 2 usage, 5 broker."})
final class DemoCommand implements Callable<Integer> {
    private static final long STOP_MS = 1000;
    /** How far time goes on for an entry made when the story is over: past what late readings are waited for. */
    private static final Duration AFTER = Duration.ofSeconds(5);

    @Spec
    private CommandSpec spec;

    @Option(names = "--speed", defaultValue = "90", paramLabel = "N", description = "Times real time. Default: 90.")
    private String speed;

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        double times = Speeds.parse(speed);
        if (Double.isNaN(times) || Double.isInfinite(times)) {
            err.println("--speed " + speed + ": not a speed; give a number from 0.1 to 100000");
            return ExitCode.USAGE;
        }
        try (LoopbackBroker broker = new LoopbackBroker()) {
            return play(broker, times, err);
        }
    }

    private static int play(LoopbackBroker broker, double times, PrintWriter err) throws IOException {
        SiteFile file = site();
        List<RecordedLine> lines = DemoFeed.lines();
        EventLog log = new EventLog();
        TrendBuffer trends = new TrendBuffer(Station.TREND_VALUES);
        Pipeline pipeline = new Pipeline(file, log::alarm, r -> trends.add(r.probe(), r.at(), r.value()));
        pipeline.onEntry(log::entry);
        DemoFeed.season().forEach(pipeline::remember);
        int next = 0;
        while (next < lines.size() && lines.get(next).time().isBefore(DemoFeed.STORY)) {
            pipeline.accept(lines.get(next));
            next++;
        }
        pipeline.advanceTo(DemoFeed.STORY);
        InboundQueue queue = new InboundQueue();
        List<String> topics =
                file.bindings().stream().map(ProbeBinding::topic).distinct().toList();
        BrokerSettings settings = BrokerSettings.at(broker.url());
        PacedClock clock = new PacedClock(DemoFeed.STORY, times);
        LiveWatch watch = new LiveWatch(pipeline, queue, clock, WatchRecord.inMemory());
        watch.note("demo " + Math.round(times) + "x");
        CountDownLatch up = new CountDownLatch(1);
        try (MqttFeed feed = new MqttFeed(settings, topics, queue, clock, state -> {
            watch.feed(state);
            if (state.up()) {
                up.countDown();
            }
        })) {
            feed.start();
            ScreenRun.daemon(watch, "watch").start();
            List<RecordedLine> story = lines.subList(next, lines.size());
            Thread demo = ScreenRun.daemon(() -> publish(broker, story, clock, watch, up), "demo");
            demo.start();
            int code = ScreenRun.show(
                    () -> ScreenRun.frame(watch.latest(), trends, log),
                    Entries.unkept(entry -> {
                        watch.enter(entry);
                        if (!demo.isAlive()) {
                            clock.holdAt(clock.instant().plus(AFTER)); // or it would never take effect
                        }
                    }),
                    err);
            demo.interrupt();
            demo.join(STOP_MS);
            return code;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return ExitCode.GOOD;
        } finally {
            watch.stop();
        }
    }

    private static void publish(
            LoopbackBroker broker, List<RecordedLine> story, PacedClock clock, LiveWatch watch, CountDownLatch up) {
        try (MqttPublisher publisher = new MqttPublisher(broker.url())) {
            up.await();
            for (RecordedLine line : story) {
                clock.holdAt(line.time());
                Duration wait = Duration.between(clock.instant(), line.time());
                while (!wait.isNegative() && !wait.isZero()) {
                    LockSupport.parkNanos(2_000_000);
                    if (Thread.interrupted()) {
                        return;
                    }
                    wait = Duration.between(clock.instant(), line.time());
                }
                switch (line.kind()) {
                    case MESSAGE -> {
                        RecordedLine.Message message = (RecordedLine.Message) line;
                        publisher.publish(message.topic(), message.payload());
                    }
                    case ENTRY -> watch.enter(((RecordedLine.Entry) line).entry());
                    case FEED, WATCH_STARTED -> {
                        // a simulated site tells neither
                    }
                }
            }
            watch.note("demo over");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    static SiteFile site() throws IOException {
        try (InputStream in = DemoCommand.class.getResourceAsStream(DemoFeed.SITE)) {
            if (in == null) {
                throw new IOException("the demo's site file is missing from the program");
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            if (SiteFileReader.read(text, "larkfield.yaml") instanceof SiteFileResult.Good good) {
                return good.siteFile();
            }
            throw new IOException("the demo's site file is faulty");
        }
    }
}
