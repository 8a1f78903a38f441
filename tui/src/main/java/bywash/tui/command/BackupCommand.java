package bywash.tui.command;

import bywash.ingest.journal.JournalReader;
import bywash.ingest.text.PlainText;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A copy of the journal, while the watch runs. */
@Command(
        name = "backup",
        mixinStandardHelpOptions = true,
        description =
                "Copies the journal to a new file, also while the watch runs. Put back under its old name, it serves.",
        footer = {"", "Exit codes: 0 good, 2 usage."})
final class BackupCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The copy; must not stand already.")
    private Path target;

    @Mixin
    private final WhichSite which = new WhichSite();

    @Override
    public Integer call() {
        try (JournalReader journal = JournalReader.open(which.folder(), which.id())) {
            journal.copyTo(target);
            return ExitCode.GOOD;
        } catch (IOException e) {
            spec.commandLine().getErr().println(PlainText.of(FileFault.words(e), 800));
            spec.commandLine().getErr().flush();
            return ExitCode.USAGE;
        }
    }
}
