package bywash.ingest.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * What a fault of the journal's file means: whether the file is damaged, and what the grower is told to do. SQLite's codes are those of
 * its page "Result and Error Codes"; an extended code counts as its primary one.
 */
final class JournalFault {
    /** Bytes that the files beside the journal need. */
    private static final long ROOM = 65_536;

    private JournalFault() {}

    /** No file of ours, a malformed one, or one whose own numbers contradict each other, which no healthy one does. */
    static boolean damaged(SQLException e) {
        return switch (primary(e)) {
            case SQLITE_CORRUPT, SQLITE_CONSTRAINT, SQLITE_NOTADB -> true;
            case SQLITE_OK -> false;
            default -> String.valueOf(e.getMessage()).contains("no such table"); // of ours: it was emptied
        };
    }

    /** What a fault means, for the grower. */
    static JournalState of(Exception e, Path journal) {
        SQLiteErrorCode code = primary(e);
        boolean maybeFull = switch (code) {
            case SQLITE_OK, SQLITE_IOERR, SQLITE_CANTOPEN -> true;
            default -> false;
        };
        return switch (maybeFull && noRoom(journal) ? SQLiteErrorCode.SQLITE_FULL : code) {
            case SQLITE_FULL -> state(journal, "disk full, make room", "the disk is full; make room");
            case SQLITE_READONLY, SQLITE_CANTOPEN, SQLITE_PERM, SQLITE_AUTH ->
                state(journal, "no right to write", "it may not be written; check the rights of the folder");
            case SQLITE_IOERR -> state(journal, "disk fault", "the disk reports a fault; check it");
            case SQLITE_BUSY, SQLITE_LOCKED ->
                state(journal, "held by another", "another program holds it; close that");
            case SQLITE_CORRUPT, SQLITE_CONSTRAINT, SQLITE_NOTADB -> state(journal, "damaged", "it is damaged");
            default ->
                state(
                        journal,
                        "see bywash.log",
                        e instanceof IOException ? "it cannot be used (" + e + ")" : String.valueOf(e.getMessage()));
        };
    }

    private static JournalState state(Path journal, String brief, String words) {
        return new JournalState(false, brief, "journal " + journal + ": " + words + ". The watch goes on in memory");
    }

    /** What SQLite calls a fault may be a full disk: it needs room even to open a file. */
    private static boolean noRoom(Path journal) {
        try {
            return Files.getFileStore(journal.toAbsolutePath().getParent()).getUsableSpace() < ROOM;
        } catch (IOException e) {
            return false;
        }
    }

    /** The primary code, which an extended one holds in its lowest byte; OK for a fault that is not SQLite's. */
    private static SQLiteErrorCode primary(Exception e) {
        @Nullable SQLiteErrorCode code = e instanceof SQLiteException s ? s.getResultCode() : null;
        return code == null ? SQLiteErrorCode.SQLITE_OK : SQLiteErrorCode.getErrorCode(code.code & 0xff);
    }
}
