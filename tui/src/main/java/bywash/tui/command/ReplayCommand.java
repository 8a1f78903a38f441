package bywash.tui.command;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.SiteFile;
import bywash.ingest.text.PlainText;
import bywash.tui.watch.AlarmLines;
import bywash.tui.watch.Pipeline;
import bywash.tui.watch.ReplayReport;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plays recordings through the live path. */
@Command(
        name = "replay",
        mixinStandardHelpOptions = true,
        description = "Plays recordings (.jsonl or .jsonl.gz) through the same path as a live feed.",
        footer = {"", "Exit codes: 0 good, 2 usage, 3 site file, 4 recording."})
final class ReplayCommand implements Callable<Integer> {
    private static final Duration REPORT_EVERY = Duration.ofSeconds(60);

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Recordings, in order of time.")
    private List<Path> files;

    @Option(names = "--site", required = true, paramLabel = "SITE", description = "The site file.")
    private Path site;

    @Option(names = "--speed", defaultValue = "60", paramLabel = "N|max", description = "Times real time. Default: 60.")
    private String speed;

    @Option(names = "--headless", description = "No screen: prints one alarm line a transition, at full speed.")
    private boolean headless;

    @Option(names = "--report", paramLabel = "FILE", description = "Writes a JSON report (with --headless).")
    private @Nullable Path report;

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        double times = Speeds.parse(speed);
        if (Double.isNaN(times)) {
            err.println(
                    "--speed " + PlainText.of(speed, 40) + ": not a speed; give a number from 0.1 to 100000, or max");
            return ExitCode.USAGE;
        }
        if (report != null && !headless) {
            err.println("--report is written by a replay without a screen; add --headless");
            return ExitCode.USAGE;
        }
        SiteFile file = SiteFiles.read(site, err);
        if (file == null) {
            return ExitCode.SITE_FILE;
        }
        return headless ? headless(file, err) : onScreen(file, times, err);
    }

    private int headless(SiteFile file, PrintWriter err) throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        ReplayReport sum = new ReplayReport();
        Pipeline pipeline = new Pipeline(
                file,
                t -> {
                    out.print(AlarmLines.of(file.site().id(), t));
                    out.print('\n');
                    sum.transition(t);
                },
                reading -> {});
        if (report != null) {
            pipeline.onFlows((at, findings) -> sum.flows(findings));
        }
        Instant[] next = {Instant.MIN};
        boolean whole = Recordings.read(files, err, line -> {
            pipeline.accept(line);
            if (report != null && line.time().isAfter(next[0])) {
                sum.snapshot(pipeline.snapshot());
                next[0] = line.time().plus(REPORT_EVERY);
            }
        });
        if (!whole) {
            return ExitCode.RECORDING;
        }
        pipeline.finish();
        out.flush();
        if (report != null) {
            sum.snapshot(pipeline.snapshot());
            sum.write(file.site().id(), report);
        }
        if (pipeline.refused() > 0) {
            err.println(pipeline.refused() + " payloads refused; the last: " + pipeline.lastRefusal());
        }
        if (pipeline.unknownTopics() > 0) {
            err.println(pipeline.unknownTopics() + " messages on topics that the site file does not name");
        }
        err.flush();
        return ExitCode.GOOD;
    }

    private int onScreen(SiteFile file, double times, PrintWriter err) throws IOException {
        List<RecordedLine> lines = new ArrayList<>();
        if (!Recordings.read(files, err, lines::add)) {
            return ExitCode.RECORDING;
        }
        return ScreenRun.replay(file, lines, times, err);
    }
}
