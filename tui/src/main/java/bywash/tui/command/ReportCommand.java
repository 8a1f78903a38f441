package bywash.tui.command;

import bywash.ingest.journal.JournalReader;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.ingest.text.PlainText;
import bywash.tui.account.Chronicle;
import bywash.tui.account.JournalChronicle;
import bywash.tui.account.RecordingChronicle;
import bywash.tui.report.JournalSeason;
import bywash.tui.report.Report;
import bywash.tui.report.ReportWriter;
import bywash.tui.report.SeasonReport;
import bywash.tui.report.SeasonRun;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reports what a journal or recordings hold. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        description = {
            "Reports an incident, a day, a month, any other span, or the season, out of the journal, also while the watch"
                    + " runs, or out of recordings; as Markdown with text plots, CSV and JSON.",
            "Without --incident, --day, --month, --from, --to or --season, lists the incidents."
        },
        footer = {
            "",
            "Example: bywash report --from 2026-05-14T18:00 --to 2026-05-15T00:00",
            "         bywash report --incident latest --out incident.md --csv tables --json incident.json",
            "",
            "Exit codes: 0 good, 2 usage, or nothing such on record, 3 site file, 4 journal or recording."
        })
final class ReportCommand implements Callable<Integer> {
    private static final int LONGEST = 4000;

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "FILE",
            arity = "0..*",
            description = "Recordings, in order of time. Without one, the journal.")
    private List<Path> files = List.of();

    @Option(
            names = "--site",
            paramLabel = "SITE",
            description = "The site file. Needed with recordings; the journal knows the one its watch was given.")
    private @Nullable Path site;

    @Mixin
    private final ReportOptions options = new ReportOptions();

    @Mixin
    private final WhichSite which = new WhichSite();

    /** Ends the command with a code; what is wrong has been said, or is the message. */
    private static final class Ends extends Exception {
        private static final long serialVersionUID = 1L;
        private final int code;

        Ends(int code, String message) {
            super(message);
            this.code = code;
        }
    }

    @Override
    public Integer call() {
        try {
            if (options.chosen() > 1) {
                throw new Ends(
                        ExitCode.USAGE,
                        "give one of --incident, --day, --month, --from and --to, --season, not several");
            }
            if (files.isEmpty()) {
                journal();
            } else {
                recordings();
            }
            return ExitCode.GOOD;
        } catch (Ends e) {
            return say(e.code, e.getMessage());
        } catch (ReportChoice.NotThere e) {
            return say(ExitCode.USAGE, e.getMessage());
        } catch (IOException e) {
            return say(ExitCode.RECORDING, e.getMessage());
        }
    }

    private int say(int code, @Nullable String words) {
        PrintWriter err = spec.commandLine().getErr();
        if (words != null && !words.isEmpty()) {
            words.lines().forEach(line -> err.println(PlainText.of(line, LONGEST)));
        }
        err.flush();
        return code;
    }

    private void journal() throws IOException, Ends, ReportChoice.NotThere {
        try (JournalReader journal = JournalReader.open(which.folder(), which.id())) {
            SiteFile file = site == null ? kept(journal) : given(site);
            if (options.season) {
                write(new SeasonReport(JournalSeason.of(file, journal)
                        .orElseThrow(() -> new IOException("the journal is empty; a watch must run first"))));
            } else {
                write(new JournalChronicle(file, journal), file);
            }
        }
    }

    /** The site as the watch was told of it. */
    private static SiteFile kept(JournalReader journal) throws IOException, Ends {
        String text = journal.site();
        if (text != null && SiteFileReader.read(text, "site in the journal") instanceof SiteFileResult.Good good) {
            return good.siteFile();
        }
        throw new Ends(
                ExitCode.USAGE,
                text == null
                        ? "the journal holds no site file yet; give it with --site, or start the watch once more"
                        : "this program does not understand the site file in the journal; give it with --site");
    }

    private SiteFile given(Path path) throws Ends {
        SiteFile file = SiteFiles.read(path, spec.commandLine().getErr());
        if (file == null) {
            throw new Ends(ExitCode.SITE_FILE, "");
        }
        return file;
    }

    private void recordings() throws IOException, Ends, ReportChoice.NotThere {
        if (site == null) {
            throw new Ends(ExitCode.USAGE, "recordings name no site; give its file with --site");
        }
        SiteFile file = given(site);
        PrintWriter err = spec.commandLine().getErr();
        RecordingChronicle.Lines lines = to -> {
            if (!Recordings.read(files, err, to)) {
                throw new IOException();
            }
        };
        if (options.season) {
            SeasonRun run = new SeasonRun(file);
            lines.play(run::accept);
            write(new SeasonReport(run.finish()
                    .orElseThrow(() -> new IOException(
                            "the recordings hold no line to report on; give a recording with readings or entries"))));
        } else {
            write(new RecordingChronicle(file, lines), file);
        }
    }

    private void write(Chronicle record, SiteFile file) throws IOException, ReportChoice.NotThere, Ends {
        ReportChoice choice = new ReportChoice(record, file.site(), options);
        if (options.chosen() == 0) {
            print(choice.list());
        } else {
            write(choice.report());
        }
    }

    private void print(String text) {
        PrintWriter to = spec.commandLine().getOut();
        to.print(text);
        to.flush();
    }

    /** Files first: where one cannot be written nothing is printed that would hide it. */
    private void write(Report report) throws Ends {
        boolean jsonOut = options.json != null && options.json.toString().equals("-");
        try {
            if (options.out != null) {
                Files.writeString(options.out, ReportWriter.markdown(report));
            }
            if (options.json != null && !jsonOut) {
                Files.writeString(options.json, ReportWriter.json(report));
            }
            if (options.csv != null) {
                int tables = ReportWriter.csv(report, options.csv).size();
                say(ExitCode.GOOD, tables + " tables written to " + options.csv);
            }
            if (jsonOut) {
                print(ReportWriter.json(report));
            } else if (options.out == null) {
                print(ReportWriter.markdown(report));
            }
        } catch (IOException e) {
            throw new Ends(ExitCode.USAGE, "the report cannot be written: " + FileFault.words(e));
        }
    }
}
