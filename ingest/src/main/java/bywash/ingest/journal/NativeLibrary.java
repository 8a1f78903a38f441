package bywash.ingest.journal;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Where SQLite's native library is unpacked to at each start: a folder of the user's own. The machine's folder for passing files is
 * anybody's and may forbid to load programs from it, and a megabyte that a killed program left there would stay.
 */
final class NativeLibrary {
    /** As the JDBC driver names it; who sets it himself is obeyed. */
    private static final String PROPERTY = "org.sqlite.tmpdir";

    private static final Logger LOG = LoggerFactory.getLogger(NativeLibrary.class);
    private static final String LEFT_BEHIND = "sqlite-*sqlitejdbc*";
    /** Younger ones may be about to be loaded by another program of the same user. */
    private static final Duration STALE = Duration.ofMinutes(1);

    private static final long ROOM = 4_000_000;

    private static @Nullable Path chosen;
    private static InstantSource clock = InstantSource.system();

    private NativeLibrary() {}

    /** The folder to unpack to from here on; made when it is needed. */
    static synchronized void folder(Path folder, InstantSource time) {
        chosen = folder;
        clock = time;
    }

    /** To be called before SQLite is opened. Where the folder cannot be used the machine's own is. */
    static synchronized void prepare() {
        Path folder = chosen;
        if (folder == null || System.getProperty(PROPERTY) != null) {
            return;
        }
        chosen = null;
        try {
            JournalFile.createFolder(folder);
            sweep(folder, clock.instant());
            if (Files.isWritable(folder) && Files.getFileStore(folder).getUsableSpace() >= ROOM) {
                System.setProperty(PROPERTY, folder.toString());
            }
        } catch (IOException e) {
            LOG.debug("SQLite is unpacked elsewhere", e);
        }
    }

    /** Takes away what programs left that were killed. One that is still loaded stays so, though its file is gone. */
    static void sweep(Path folder, Instant now) throws IOException {
        try (DirectoryStream<Path> left = Files.newDirectoryStream(folder, LEFT_BEHIND)) {
            for (Path each : left) {
                if (Files.getLastModifiedTime(each).toInstant().isBefore(now.minus(STALE))) {
                    Files.deleteIfExists(each);
                }
            }
        }
    }
}
