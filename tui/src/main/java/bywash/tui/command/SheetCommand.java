package bywash.tui.command;

import bywash.ingest.site.SiteFile;
import bywash.ingest.text.PlainText;
import bywash.rules.response.ResponseSheet;
import bywash.tui.sheet.SheetFormat;
import bywash.tui.watch.Pipeline;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints the response sheet of an incident. */
@Command(
        name = "sheet",
        mixinStandardHelpOptions = true,
        description =
                "Prints the response sheet of an incident in recordings: what happened, what to do, what was done.",
        footer = {"", "Exit codes: 0 good, 2 usage, or no such incident, 3 site file, 4 recording."})
final class SheetCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Recordings, in order of time.")
    private List<Path> files;

    @Option(names = "--site", required = true, paramLabel = "SITE", description = "The site file.")
    private Path site;

    @Option(names = "--incident", paramLabel = "ID", description = "Which incident. Default: the latest.")
    private @Nullable String incident;

    @Option(
            names = "--format",
            defaultValue = "text",
            paramLabel = "text|markdown",
            description = "How it is written. Default: text.")
    private String format;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        SheetFormat as = format(format);
        if (as == null) {
            err.println("--format " + PlainText.of(format, 40) + ": not a format; give text or markdown");
            return ExitCode.USAGE;
        }
        SiteFile file = SiteFiles.read(site, err);
        if (file == null) {
            return ExitCode.SITE_FILE;
        }
        Pipeline pipeline = new Pipeline(file, t -> {}, reading -> {});
        if (!Recordings.read(files, err, pipeline::accept)) {
            return ExitCode.RECORDING;
        }
        pipeline.finish();
        List<ResponseSheet> sheets = pipeline.snapshot().care().sheets();
        ResponseSheet sheet = sheets.stream()
                .filter(s -> incident == null || s.incident().equals(incident))
                .findFirst()
                .orElse(null);
        if (sheet == null) {
            String known = sheets.stream().map(ResponseSheet::incident).collect(Collectors.joining(", "));
            err.println("no such incident; there is " + (known.isEmpty() ? "none in these recordings" : known));
            return ExitCode.USAGE;
        }
        spec.commandLine()
                .getOut()
                .print(as.write(sheet, file.site().timeZone(), file.site().units()));
        spec.commandLine().getOut().flush();
        return ExitCode.GOOD;
    }

    private static @Nullable SheetFormat format(String word) {
        for (SheetFormat format : SheetFormat.values()) {
            if (format.name().equalsIgnoreCase(word)) {
                return format;
            }
        }
        return null;
    }
}
