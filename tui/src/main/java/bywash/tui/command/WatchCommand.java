package bywash.tui.command;

import bywash.ingest.journal.FileJournal;
import bywash.ingest.mqtt.InboundQueue;
import bywash.ingest.mqtt.MqttFeed;
import bywash.ingest.site.ProbeBinding;
import bywash.ingest.site.SiteFile;
import bywash.tui.view.EventLog;
import bywash.tui.view.TrendBuffer;
import bywash.tui.watch.AlarmLines;
import bywash.tui.watch.LiveWatch;
import bywash.tui.watch.Pipeline;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Watches a site live. */
@Command(
        name = "watch",
        mixinStandardHelpOptions = true,
        description = "Watches a site over MQTT, on the screen or, with --headless, as alarm lines.",
        footer = {"", "Exit codes: 0 good, 2 usage, 3 site file, 5 broker, 70 a fault of ours."})
final class WatchCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(names = "--site", required = true, paramLabel = "SITE", description = "The site file.")
    private Path site;

    @Option(
            names = "--state",
            paramLabel = "FOLDER",
            description = "Where the journal is kept. Default: $XDG_STATE_HOME/bywash or ~/.local/state/bywash.")
    private @Nullable Path state;

    @Option(names = "--headless", description = "No screen: prints one alarm line a transition.")
    private boolean headless;

    @Override
    public Integer call() throws IOException, InterruptedException {
        PrintWriter err = spec.commandLine().getErr();
        SiteFile file = SiteFiles.read(site, err);
        if (file == null) {
            return ExitCode.SITE_FILE;
        }
        FileJournal journal;
        try {
            journal = FileJournal.open(
                    state != null ? state : StateFolder.standard(), file.site().id());
        } catch (IOException e) {
            err.println(e.getMessage());
            return ExitCode.USAGE;
        }
        PrintWriter out = spec.commandLine().getOut();
        TrendBuffer trends = new TrendBuffer(ScreenRun.TREND_VALUES);
        EventLog log = new EventLog();
        AtomicBoolean live = new AtomicBoolean();
        Pipeline pipeline = new Pipeline(
                file,
                t -> {
                    log.alarm(t);
                    if (headless && live.get()) {
                        out.print(AlarmLines.of(file.site().id(), t) + "\n");
                        out.flush();
                    }
                },
                r -> trends.add(r.probe(), r.at(), r.value()));
        pipeline.onEntry(log::entry);
        long broken = journal.replay(pipeline::accept);
        if (broken > 0) {
            err.println(broken + " broken lines in the journal were passed over");
        }
        live.set(true);
        return run(file, pipeline, journal, trends, log);
    }

    private int run(SiteFile file, Pipeline pipeline, FileJournal journal, TrendBuffer trends, EventLog log)
            throws IOException, InterruptedException {
        InboundQueue queue = new InboundQueue();
        LiveWatch watch = new LiveWatch(pipeline, queue, InstantSource.system(), journal);
        List<String> topics =
                file.bindings().stream().map(ProbeBinding::topic).distinct().toList();
        Thread loop = ScreenRun.daemon(watch, "watch");
        try (MqttFeed feed = new MqttFeed(file.broker(), topics, queue, InstantSource.system(), watch::feed)) {
            Runtime.getRuntime().addShutdownHook(new Thread(watch::stop, "stop watch"));
            feed.start();
            loop.start();
            if (headless) {
                loop.join();
                return ExitCode.GOOD;
            }
            return ScreenRun.show(
                    () -> ScreenRun.frame(watch.latest(), trends, log),
                    watch::enter,
                    spec.commandLine().getErr());
        } finally {
            watch.stop();
            loop.join(2000);
        }
    }
}
