package bywash.tui.command;

import bywash.ingest.journal.JournalReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options of commands on a journal: whose, and where it is kept. */
final class WhichSite {
    @Option(
            names = "--id",
            paramLabel = "ID",
            description = "The id of the site. Not needed where one site has a journal here.")
    private @Nullable String id;

    @Option(names = "--state", paramLabel = "FOLDER", description = StateFolder.DESCRIPTION)
    private @Nullable Path state;

    Path folder() {
        return state != null ? state : StateFolder.standard();
    }

    /**
     * The id given, or of the only journal.
     *
     * @throws IOException in words, where there is none or are several
     */
    String id() throws IOException {
        if (id != null) {
            return id;
        }
        List<String> sites = JournalReader.sites(folder());
        if (sites.isEmpty()) {
            throw new IOException("no journal in " + folder() + "; give --state the folder of a watch");
        }
        if (sites.size() > 1) {
            throw new IOException(
                    "journals of " + String.join(", ", sites) + " in " + folder() + "; name one with --id");
        }
        return sites.get(0);
    }
}
