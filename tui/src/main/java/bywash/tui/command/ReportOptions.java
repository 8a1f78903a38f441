package bywash.tui.command;

import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What is reported, and where it is written. */
final class ReportOptions {
    @Option(
            names = "--incident",
            paramLabel = "ID",
            description = "One incident: its id or the beginning of it, or: latest.")
    @Nullable
    String incident;

    @Option(names = "--day", paramLabel = "DATE", description = "One day at the site, such as 2026-05-14.")
    @Nullable
    String day;

    @Option(names = "--month", paramLabel = "MONTH", description = "One month at the site, such as 2026-05.")
    @Nullable
    String month;

    @Option(
            names = "--from",
            paramLabel = "TIME",
            description = "From a time at the site on, such as 2026-05-14T18:00; Z behind it means UTC.")
    @Nullable
    String from;

    @Option(names = "--to", paramLabel = "TIME", description = "Up to a time. Default: the end of the record.")
    @Nullable
    String to;

    @Option(names = "--season", description = "The season: water, fish, feed, harvest, plants, probes.")
    boolean season;

    @Option(names = "--out", paramLabel = "FILE", description = "Writes the Markdown there, not to standard output.")
    @Nullable
    Path out;

    @Option(names = "--csv", paramLabel = "FOLDER", description = "Writes every table there as a CSV file as well.")
    @Nullable
    Path csv;

    @Option(
            names = "--json",
            paramLabel = "FILE",
            description = "Writes every table there as JSON as well; - to standard output, in place of the Markdown.")
    @Nullable
    Path json;

    /** How many of the ways to say what were used. */
    int chosen() {
        return Collections.frequency(
                List.of(incident != null, day != null, month != null, from != null || to != null, season), true);
    }
}
