package bywash.ingest.journal;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;

/** The journal's file: its place, its rights, its lock, the ways to open it, and where it goes when it is damaged. */
final class JournalFile implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(JournalFile.class);
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss.SSS").withZone(ZoneOffset.UTC);

    private final Path path;
    private final FileChannel channel;
    private final FileLock lock;
    /** Of the file as it was opened, and the bytes it had when last looked at. */
    private @Nullable Object key;

    private long size;

    private JournalFile(Path path, FileChannel channel, FileLock lock) {
        this.path = path;
        this.channel = channel;
        this.lock = lock;
    }

    static void loadLibrary() {
        NativeLibrary.prepare();
        try (Connection db = new SQLiteConfig().createConnection("jdbc:sqlite::memory:")) {
            Schema.migrate(db);
        } catch (SQLException e) {
            // Opening the file meets the same fault, and says it.
        }
    }

    /**
     * Takes the lock.
     *
     * @throws IOException in words for the grower
     */
    static JournalFile lock(Path dir, String siteId) throws IOException {
        createFolder(dir);
        Path lockPath = dir.resolve(siteId + ".db.lock");
        if (!Files.exists(lockPath)) {
            createOwned(lockPath);
        }
        FileChannel channel = FileChannel.open(lockPath, StandardOpenOption.READ, StandardOpenOption.WRITE);
        FileLock lock = null;
        try {
            lock = channel.tryLock();
        } catch (OverlappingFileLockException e) {
            // held in this very process: refused just the same
        } finally {
            if (lock == null) {
                channel.close();
            }
        }
        if (lock == null) {
            throw new JournalInUse("another watch of " + siteId + " writes the journal in " + dir
                    + "; stop it, or give this one another folder");
        }
        return new JournalFile(dir.resolve(siteId + ".db"), channel, lock);
    }

    private static FileAttribute<?>[] owner(String rights) {
        return FileSystems.getDefault().supportedFileAttributeViews().contains("posix")
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))}
                : new FileAttribute<?>[0];
    }

    /** Makes a folder, and those above it that are missing, for its owner alone. */
    static void createFolder(Path folder) throws IOException {
        Files.createDirectories(folder, owner("rwx------"));
    }

    static void createOwned(Path file) throws IOException {
        Files.createFile(file, owner("rw-------"));
    }

    Path path() {
        return path;
    }

    /** What had been kept and is there no more; null where nothing is missing. */
    @Nullable
    JournalState missing(JournalStore store) throws SQLException {
        LastKept kept = LastKept.read(channel).orElse(null);
        return kept == null || store.last() >= kept.seq()
                ? null
                : kept.missing(
                        store.last(),
                        store.read(r -> Optional.ofNullable(r.lastSeen())).orElse(null),
                        path);
    }

    /** Notes it. That it cannot be noted takes nothing from what is kept. */
    void note(LastKept last) {
        try {
            last.write(channel);
        } catch (IOException e) {
            LOG.debug("where the journal has come to cannot be noted", e);
        }
    }

    /** Opens, and makes the tables where there are none. What SQLite adds beside the file has the file's rights. */
    Connection connect() throws SQLException, IOException {
        if (!Files.exists(path)) {
            createOwned(path);
        }
        size = 0;
        key = Files.readAttributes(path, BasicFileAttributes.class).fileKey();
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(2000);
        NativeLibrary.prepare();
        Connection db = config.createConnection("jdbc:sqlite:" + path.toAbsolutePath());
        try {
            Schema.migrate(db);
            return db;
        } catch (SQLException e) {
            db.close();
            throw e;
        }
    }

    /**
     * Whether somebody took the file away, emptied it or put another in its place since it was opened. SQLite would not
     * notice and write on into nothing; the file itself never shrinks.
     */
    boolean tampered() {
        try {
            BasicFileAttributes now = Files.readAttributes(path, BasicFileAttributes.class);
            boolean other = now.size() < size || !Objects.equals(key, now.fileKey());
            size = now.size();
            return other;
        } catch (IOException e) {
            return !Files.exists(path);
        }
    }

    /**
     * Opens what is there where {@link #connect} cannot, for want of room for the files beside it: the index of the
     * write-ahead log is then held in memory. Only for whoever holds the lock, and for reading.
     */
    Connection past() throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setLockingMode(SQLiteConfig.LockingMode.EXCLUSIVE);
        config.setBusyTimeout(2000);
        NativeLibrary.prepare();
        Connection db = config.createConnection("jdbc:sqlite:" + path.toAbsolutePath());
        try {
            db.setAutoCommit(false);
            return db;
        } catch (SQLException e) {
            db.close();
            throw e;
        }
    }

    /** Opens for reading only, beside whoever writes; on a full disk, where nobody writes, as it stands. */
    static Connection reading(Path file) throws SQLException {
        try {
            return looked("jdbc:sqlite:" + file.toAbsolutePath());
        } catch (SQLException e) {
            if (JournalFault.damaged(e) || holds(file.resolveSibling(file.getFileName() + "-wal"))) {
                throw e;
            }
            return looked("jdbc:sqlite:file:" + file.toAbsolutePath().toUri().getRawPath() + "?immutable=1");
        }
    }

    private static boolean holds(Path log) {
        try {
            return Files.exists(log) && Files.size(log) > 0;
        } catch (IOException e) {
            return true;
        }
    }

    private static Connection looked(String url) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setBusyTimeout(2000);
        Connection db = config.createConnection(url);
        try (Statement s = db.createStatement()) {
            s.execute("PRAGMA schema_version");
            return db;
        } catch (SQLException e) {
            db.close();
            throw e;
        }
    }

    /** Copies all that a connection sees to a file that is there and empty; not within a transaction. */
    static void copy(Connection db, Path target) throws SQLException {
        try (PreparedStatement p = db.prepareStatement("VACUUM INTO ?")) {
            p.setString(1, target.toAbsolutePath().toString());
            p.execute();
        }
    }

    /** Renames the damaged file, and what belongs to it, out of the way. Returns its new place. */
    Path setAside(Instant now) throws IOException {
        Path aside = path.resolveSibling(path.getFileName() + ".damaged-" + STAMP.format(now));
        for (String tail : new String[] {"", "-wal", "-shm"}) {
            Path beside = path.resolveSibling(path.getFileName() + tail);
            if (Files.exists(beside)) {
                Files.move(beside, aside.resolveSibling(aside.getFileName() + tail));
            }
        }
        return aside;
    }

    @Override
    public void close() throws IOException {
        lock.release();
        channel.close();
    }

    /** The file is not the one that was opened. */
    static final class Tampered extends SQLException {
        private static final long serialVersionUID = 1L;

        Tampered() {
            super("the file was taken away, emptied or replaced");
        }
    }
}
