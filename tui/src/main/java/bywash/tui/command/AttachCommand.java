package bywash.tui.command;

import bywash.tui.attach.LocalTty;
import bywash.tui.attach.SocketPlace;
import bywash.tui.attach.WatchClient;
import bywash.tui.screen.DisplaySettings;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The screen of a watch that runs already. */
@Command(
        name = "attach",
        mixinStandardHelpOptions = true,
        description = "Shows the screen of a running watch. Several may be attached; leaving harms nothing.",
        footer = {"", "Exit codes: 0 good, 2 usage or no watch, 70 the watch ended or a fault of ours."})
final class AttachCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(
            arity = "0..1",
            paramLabel = "ID",
            description = "The id of the site. Not needed where one site is watched here.")
    private @Nullable String siteId;

    @Option(names = "--state", paramLabel = "FOLDER", description = StateFolder.DESCRIPTION)
    private @Nullable Path state;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        Path folder = state != null ? state : StateFolder.standard();
        DisplaySettings settings = DisplaySettings.from(System.getenv());
        if (settings.dumb()) {
            err.println("this terminal cannot be drawn on (TERM is not set, or dumb); set TERM");
            return ExitCode.USAGE;
        }
        String site;
        try {
            site = siteId != null ? siteId : onlySite(folder);
        } catch (IOException e) {
            err.println(e.getMessage());
            return ExitCode.USAGE;
        }
        return attach(new WatchClient(folder, site), settings, err);
    }

    private static int attach(WatchClient client, DisplaySettings settings, PrintWriter err) {
        boolean left;
        try (LocalTty tty = LocalTty.take()) {
            left = client.attach(tty, settings.unicode(), settings.colour());
        } catch (IOException e) {
            err.println(e.getMessage());
            return ExitCode.USAGE;
        }
        if (!left) {
            err.println("the watch has ended; nobody is told of alarms until it runs again");
            return ExitCode.OUR_FAULT;
        }
        return ExitCode.GOOD;
    }

    /** The site that is watched here, where there is just one. */
    static String onlySite(Path folder) throws IOException {
        List<String> sites = SocketPlace.sites(folder);
        if (sites.isEmpty()) {
            throw new IOException("no watch runs in " + folder + "; start one with: bywash watch");
        }
        if (sites.size() > 1) {
            throw new IOException("several sites are watched here: " + String.join(", ", sites) + "; name one");
        }
        return sites.get(0);
    }
}
