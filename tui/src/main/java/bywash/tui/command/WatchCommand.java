package bywash.tui.command;

import bywash.ingest.feed.SteadyClock;
import bywash.ingest.journal.JournalInUse;
import bywash.ingest.site.SiteFile;
import bywash.tui.watch.Station;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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

    @Option(names = "--state", paramLabel = "FOLDER", description = StateFolder.DESCRIPTION)
    private @Nullable Path state;

    @Option(names = "--headless", description = "No screen: prints one alarm line a transition.")
    private boolean headless;

    @Mixin
    private final WordOptions words = new WordOptions();

    @Override
    public Integer call() throws IOException, InterruptedException {
        PrintWriter err = spec.commandLine().getErr();
        SiteFile file = SiteFiles.read(site, err);
        if (file == null) {
            return ExitCode.SITE_FILE;
        }
        if (!words.problem().isEmpty()) {
            err.println(words.problem());
            return ExitCode.USAGE;
        }
        Path folder = state != null ? state : StateFolder.standard();
        InstantSource clock = new SteadyClock();
        Station station;
        try (SlowStart slow = slow(file, err)) {
            station = Station.open(file, folder, clock);
        } catch (JournalInUse e) {
            err.println("a watch of " + file.site().id() + " runs already; see it with: bywash attach "
                    + file.site().id() + (state == null ? "" : " --state " + state));
            return ExitCode.USAGE;
        }
        station.record().site(clock.instant(), Files.readString(site));
        if (station.restart().broken() > 0) {
            err.println(station.restart().broken() + " broken lines in the journal were passed over");
        }
        if (headless) {
            PrintWriter out = spec.commandLine().getOut();
            station.outlets().add((transition, line) -> {
                out.print(line + "\n");
                out.flush();
            });
            station.watch().onTrouble(words -> {
                err.println(words);
                err.flush();
            });
        }
        WatchRun.Parts parts = new WatchRun.Parts(clock);
        try {
            words.measure(station, parts);
        } catch (IOException e) {
            err.println(e.getMessage());
            station.record().close();
            return ExitCode.USAGE;
        }
        words.tell(file, station, parts);
        CompletableFuture<Void> shown = headless ? CompletableFuture.completedFuture(null) : new CompletableFuture<>();
        try (WatchRun run = WatchRun.start(file, station, folder, parts, shown, err)) {
            if (headless) {
                run.await();
                return ExitCode.GOOD;
            }
            return ScreenRun.show(run::frame, run::enter, () -> shown.complete(null), err);
        }
    }

    /** A service's log needs no such word. */
    private @Nullable SlowStart slow(SiteFile file, PrintWriter err) {
        return headless
                ? null
                : SlowStart.of(
                        "reading the journal of " + file.site().id() + ": its last three days are played again", err);
    }
}
