package bywash.tui.command;

import bywash.ingest.metrics.MetricsEndpoint;
import bywash.ingest.site.SiteFile;
import bywash.tui.watch.CommandOutlet;
import bywash.tui.watch.Metering;
import bywash.tui.watch.PublishOutlet;
import bywash.tui.watch.Station;
import java.io.IOException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options of a watch that say who else is told: subscribers, a command of the grower's, a collector of figures. */
final class WordOptions {
    @Option(
            names = "--publish",
            arity = "0..1",
            fallbackValue = "bywash",
            paramLabel = "PREFIX",
            description =
                    "Publishes alarms to the site's broker, retained: PREFIX/SITE/alarm/ALARM/SUBJECT holds the last"
                            + " line, PREFIX/SITE/watch a heartbeat each 30 s, or lost. Prefix without a value: bywash.")
    private @Nullable String publish;

    @Option(
            names = "--notify",
            paramLabel = "COMMAND",
            description =
                    "Runs sh -c COMMAND for each alarm line, which it gets on standard input; BYWASH_ALARM, _SUBJECT,"
                            + " _STATE and _PRIORITY stand in its environment. 20 s at most, three tries.")
    private @Nullable String notify;

    @Option(
            names = "--metrics",
            paramLabel = "PORT",
            description =
                    "Figures on the watch itself, in the Prometheus text format, at http://127.0.0.1:PORT/metrics.")
    private @Nullable Integer metrics;

    /** What is wrong with them; empty where nothing is. */
    String problem() {
        if (publish != null && (publish.isEmpty() || publish.matches(".*[+#\\s].*|/.*|.*/"))) {
            return "--publish " + publish + ": no prefix of topics; give words with / between, such as site/alarms";
        }
        if (metrics != null && (metrics < 1 || metrics > 65_535)) {
            return "--metrics " + metrics + ": no port; give one from 1024 to 65535";
        }
        return "";
    }

    /** Opens the endpoint, before the watch starts. */
    void measure(Station station, WatchRun.Parts parts) throws IOException {
        if (metrics != null) {
            MetricsEndpoint endpoint = MetricsEndpoint.open(metrics);
            parts.add(endpoint);
            Metering.of(station, endpoint.registry());
        }
    }

    /** Sets up who is told, before the watch starts. */
    void tell(SiteFile file, Station station, WatchRun.Parts parts) {
        if (publish != null) {
            PublishOutlet outlet =
                    new PublishOutlet(file.broker(), file.site().id(), publish, station.watch(), parts.clock());
            station.outlets().add(outlet);
            station.watch().tellOf(outlet::trouble);
            parts.add(outlet.start(station.restart()));
        }
        if (notify != null) {
            CommandOutlet outlet = new CommandOutlet(notify, CommandOutlet.Patience.USUAL);
            station.outlets().add(outlet);
            station.watch().tellOf(outlet::trouble);
            parts.add(outlet);
        }
    }
}
