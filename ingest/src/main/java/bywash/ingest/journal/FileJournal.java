package bywash.ingest.journal;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordingReader;
import bywash.ingest.recording.RecordingWriter;
import java.io.BufferedOutputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The record of a watch as recordings, one file a UTC day, readable by its owner alone. An operator entry is on disk
 * before {@link #append} returns; messages are at latest with the next {@link #flush}. On restart the last days are
 * played through the rules again, which brings alarms and what was learned back as they were.
 */
public final class FileJournal implements AutoCloseable {
    private static final int REPLAY_DAYS = 3;
    private static final int KEEP_DAYS = 60;

    private final Path folder;
    private final String site;
    private final FileOutputStream lockFile;
    private final FileLock lock;
    private @Nullable FileOutputStream file;
    private @Nullable RecordingWriter writer;
    private @Nullable LocalDate day;
    private String fault = "";

    private FileJournal(Path folder, String site, FileOutputStream lockFile, FileLock lock) {
        this.folder = folder;
        this.site = site;
        this.lockFile = lockFile;
        this.lock = lock;
    }

    /**
     * Opens the journal of a site.
     *
     * @throws IOException in words fit for the grower: the folder cannot be used, or another watch uses it
     */
    public static FileJournal open(Path folder, String site) throws IOException {
        try {
            Files.createDirectories(folder);
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
        } catch (IOException e) {
            throw new IOException(folder + " cannot be used for the journal; give --state a folder you own", e);
        }
        FileOutputStream lockFile =
                new FileOutputStream(folder.resolve(site + ".lock").toFile());
        FileLock lock = lockFile.getChannel().tryLock();
        if (lock == null) {
            lockFile.close();
            throw new IOException("another watch of " + site + " is running; stop it, or give another --state folder");
        }
        return new FileJournal(folder, site, lockFile, lock);
    }

    /** Plays the last days, oldest first; broken lines are skipped and counted. */
    public long replay(Consumer<RecordedLine> to) throws IOException {
        List<Path> files = days();
        long[] broken = {0};
        for (Path path : files.subList(Math.max(0, files.size() - REPLAY_DAYS), files.size())) {
            try (RecordingReader reader = RecordingReader.open(path, (line, what, right) -> broken[0]++)) {
                for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                    to.accept(line);
                }
            }
        }
        return broken[0];
    }

    /** Writes one line; an entry is synced to disk before this returns. A fault is kept in words and never thrown. */
    public void append(RecordedLine line) {
        try {
            RecordingWriter out = today(LocalDate.ofInstant(line.time(), ZoneOffset.UTC));
            out.write(line);
            if (line instanceof RecordedLine.Entry) {
                out.flush();
                if (file != null) {
                    file.getFD().sync();
                }
            }
            fault = "";
        } catch (IOException e) {
            fault = "the journal cannot be written: " + e.getMessage() + "; the watch goes on without it";
        }
    }

    public void flush() {
        try {
            if (writer != null) {
                writer.flush();
            }
        } catch (IOException e) {
            fault = "the journal cannot be written: " + e.getMessage() + "; the watch goes on without it";
        }
    }

    /** What is wrong, in words; empty while all is well. */
    public String fault() {
        return fault;
    }

    private RecordingWriter today(LocalDate now) throws IOException {
        RecordingWriter open = writer;
        if (open != null && now.equals(day)) {
            return open;
        }
        if (open != null && day != null && now.isBefore(day)) {
            return open;
        }
        if (open != null) {
            open.close();
        }
        prune();
        Path path = folder.resolve(site + "-" + now + ".jsonl");
        endLine(path);
        FileOutputStream out = new FileOutputStream(path.toFile(), true);
        Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rw-------"));
        file = out;
        day = now;
        RecordingWriter fresh = new RecordingWriter(new BufferedOutputStream(out, 1 << 16));
        writer = fresh;
        return fresh;
    }

    /** A kill may leave half a line: ends it, so that the next line stands alone. */
    private static void endLine(Path path) throws IOException {
        if (!Files.exists(path) || Files.size(path) == 0) {
            return;
        }
        try (var channel = java.nio.channels.FileChannel.open(
                path, java.nio.file.StandardOpenOption.READ, java.nio.file.StandardOpenOption.WRITE)) {
            java.nio.ByteBuffer last = java.nio.ByteBuffer.allocate(1);
            channel.read(last, channel.size() - 1);
            if (last.get(0) != '\n') {
                channel.write(java.nio.ByteBuffer.wrap(new byte[] {'\n'}), channel.size());
            }
        }
    }

    private List<Path> days() throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return new ArrayList<>(
                    all.filter(p -> p.getFileName().toString().matches(site + "-\\d{4}-\\d\\d-\\d\\d\\.jsonl"))
                            .sorted()
                            .toList());
        }
    }

    private void prune() throws IOException {
        List<Path> files = days();
        for (Path old : files.subList(0, Math.max(0, files.size() - KEEP_DAYS))) {
            Files.deleteIfExists(old);
        }
    }

    @Override
    public void close() {
        try {
            if (writer != null) {
                writer.close();
            }
            lock.release();
            lockFile.close();
        } catch (IOException e) {
            fault = "the journal could not be closed: " + e.getMessage();
        }
    }
}
