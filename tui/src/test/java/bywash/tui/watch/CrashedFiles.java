package bywash.tui.watch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;

/**
 * A journal's folder as a crash leaves it, in another folder. A killed process leaves what it has written. Where the power
 * fails, what was written since the last sync is there or not, block by block, in no order.
 */
final class CrashedFiles {
    private static final int BLOCK = 512;
    /** The head of the write-ahead log, which SQLite syncs whenever it begins the log anew. */
    private static final int HEADER = 32;

    private final Path folder;
    private final Path wal;
    private final Path main;
    private byte[] synced = new byte[0];
    private byte[] mainThen = new byte[0];

    /** What stands now counts as synced. */
    CrashedFiles(Path folder, String site) {
        this.folder = folder;
        wal = folder.resolve(site + ".db-wal");
        main = folder.resolve(site + ".db");
        sync();
    }

    /** All that is written is on the disk. */
    void sync() {
        synced = bytes(wal);
        mainThen = bytes(main);
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.exists(file) ? Files.readAllBytes(file) : new byte[0];
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static void killed(Path from, Path to) {
        try (Stream<Path> files = Files.list(from)) {
            Files.createDirectories(to);
            List<Path> all = files.sorted().toList();
            for (Path file : all) {
                Files.copy(file, to.resolve(file.getFileName().toString()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A main file that has changed since was checkpointed, and with that all was synced: then nothing is lost. */
    void powerFailed(Path to, SplittableRandom random) {
        killed(folder, to);
        if (!Arrays.equals(mainThen, bytes(main))) {
            return;
        }
        byte[] left = bytes(wal);
        for (int at = 0; at < left.length; at += BLOCK) {
            int end = Math.min(at + BLOCK, left.length);
            if (random.nextBoolean()) {
                for (int i = Math.max(at, HEADER); i < end; i++) {
                    left[i] = i < synced.length ? synced[i] : 0;
                }
            }
        }
        try {
            Files.write(to.resolve(wal.getFileName().toString()), left);
            Files.deleteIfExists(to.resolve(main.getFileName() + "-shm"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
