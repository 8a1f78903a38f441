package bywash.ingest.journal;

import java.io.IOException;
import java.nio.file.Path;

/**
 * Whether the journal keeps what it is given.
 *
 * @param durable false while it cannot; the watch then goes on in memory
 * @param brief what is wrong, or was done, in a few words for a head line; empty while all is well
 * @param detail what is wrong and what to do, or what was done; empty while all is well
 */
public record JournalState(boolean durable, String brief, String detail) {
    static final JournalState GOOD = new JournalState(true, "", "");

    static JournalState noFolder(Path dir, IOException why) {
        return new JournalState(
                false,
                "folder cannot be used",
                "journal folder " + dir + " cannot be used (" + why + "). The watch goes on in memory");
    }

    /** A fresh file in place of a damaged one does not work either. */
    static JournalState beyondHelp(Path file) {
        return new JournalState(
                false, "see bywash.log", "journal " + file + " cannot be kept. The watch goes on in memory");
    }

    /** @param aside where the damaged file is kept */
    static JournalState begunAnew(Path aside, Salvage.Saved saved) {
        return new JournalState(
                true,
                "JOURNAL WAS DAMAGED: a new one holds what could be read, " + saved.words(),
                "the journal was damaged; it is kept as " + aside + ", a new one begun with what could be read of it: "
                        + saved.words());
    }
}
