package bywash.ingest.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NativeLibraryTest {
    private static final Instant NOW = Instant.parse("2026-05-04T06:00:00Z");

    @TempDir
    Path folder;

    private void file(String name, int secondsOld) throws IOException {
        Path file = Files.writeString(folder.resolve(name), "x");
        Files.setLastModifiedTime(file, FileTime.from(NOW.minusSeconds(secondsOld)));
    }

    @Test
    void sweepsOldLibrariesAndTheirMarksAndNothingElse() throws IOException {
        file("sqlite-3.50.0.0-1f-libsqlitejdbc.so", 61);
        file("sqlite-3.50.0.0-1f-libsqlitejdbc.so.lck", 3600);
        file("sqlite-3.50.0.0-2e-libsqlitejdbc.so", 59); // another program may be about to load it
        file("larkfield.db", 3600);
        NativeLibrary.sweep(folder, NOW);
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(
                    List.of("larkfield.db", "sqlite-3.50.0.0-2e-libsqlitejdbc.so"),
                    left.map(each -> each.getFileName().toString()).sorted().toList());
        }
    }
}
