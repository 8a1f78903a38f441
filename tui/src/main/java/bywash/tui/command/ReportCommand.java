package bywash.tui.command;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordingReader;
import bywash.ingest.site.SiteFile;
import bywash.ingest.text.PlainText;
import bywash.tui.report.ReportWriter;
import bywash.tui.report.SeasonData;
import bywash.tui.report.SeasonReport;
import bywash.tui.report.SeasonRun;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reports what recordings add up to. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        description =
                "Reports the season that recordings or entries hold: water, incidents, tests, fish, feed, harvest, plants,"
                        + " probes, as Markdown with text plots.",
        footer = {"", "Exit codes: 0 good, 2 usage, 3 site file, 4 recording."})
final class ReportCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Recordings, in order of time.")
    private List<Path> files;

    @Option(names = "--site", required = true, paramLabel = "SITE", description = "The site file.")
    private Path site;

    @Option(names = "--season", required = true, description = "The report of the season.")
    private boolean season;

    @Option(names = "--out", paramLabel = "FILE", description = "Writes the Markdown there, not to standard output.")
    private @Nullable Path out;

    @Option(names = "--csv", paramLabel = "FOLDER", description = "Writes every table there as a CSV file as well.")
    private @Nullable Path csv;

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        SiteFile file = SiteFiles.read(site, err);
        if (file == null) {
            return ExitCode.SITE_FILE;
        }
        SeasonRun run = new SeasonRun(file);
        for (Path path : files) {
            try (RecordingReader reader = RecordingReader.open(path, Broken.to(path, err))) {
                for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                    run.accept(line);
                }
            } catch (IOException e) {
                err.println(PlainText.of(
                        path + ": cannot be read: " + e.getMessage() + "; give a recording (.jsonl or .jsonl.gz)",
                        800));
                err.flush();
                return ExitCode.RECORDING;
            }
        }
        Optional<SeasonData> data = run.finish();
        if (data.isEmpty()) {
            err.println("the recordings hold no line to report on; give a recording with readings or entries");
            err.flush();
            return ExitCode.RECORDING;
        }
        return write(new SeasonReport(data.get()), err);
    }

    private int write(SeasonReport report, PrintWriter err) throws IOException {
        String markdown = ReportWriter.markdown(report);
        if (out == null) {
            PrintWriter to = spec.commandLine().getOut();
            to.print(markdown);
            to.flush();
        } else {
            Files.writeString(out, markdown);
        }
        if (csv != null) {
            err.println(
                    ReportWriter.csv(report, csv).size() + " tables written to " + PlainText.of(csv.toString(), 400));
            err.flush();
        }
        return ExitCode.GOOD;
    }
}
