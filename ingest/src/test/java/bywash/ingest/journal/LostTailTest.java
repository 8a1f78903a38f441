package bywash.ingest.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** After a kill the write-ahead log holds the newest lines: SQLite says nothing where it is gone or spoilt, the journal does. */
class LostTailTest {
    private static final Instant T0 = JournalTest.T0;

    @TempDir
    Path dir;

    private int second;

    private Path file(String tail) {
        return dir.resolve("killed").resolve("larkfield.db" + tail);
    }

    private Journal open(String folder) throws Exception {
        return Journal.open(dir.resolve(folder), "larkfield", () -> T0.plusSeconds(second));
    }

    private void note(Journal journal) {
        assertTrue(journal.appendEntry(JournalTest.note(++second, "note " + second)));
    }

    /** Ten entries in the file, five in the log beside it, and a message that nobody promised anything of. */
    private void killed() throws Exception {
        try (Journal first = open("live")) {
            for (int i = 0; i < 10; i++) {
                note(first);
            }
        }
        try (Journal journal = open("live")) {
            second = 3600;
            for (int i = 0; i < 5; i++) {
                note(journal);
            }
            journal.appendMessages(java.util.List.of(JournalTest.message(++second, "a", "1")));
            Files.createDirectories(dir.resolve("killed"));
            try (Stream<Path> all = Files.list(dir.resolve("live"))) {
                for (Path each : all.toList()) {
                    Files.copy(each, dir.resolve("killed").resolve(each.getFileName()));
                }
            }
        }
    }

    private static int notes(Journal journal) {
        return journal.keptBefore(T0.plusSeconds(86_400)).size();
    }

    @Test
    void aKillAloneLosesNothingAndSaysNothing() throws Exception {
        killed();
        try (Journal journal = open("killed")) {
            assertEquals(JournalState.GOOD, journal.state());
            assertEquals(15, notes(journal));
        }
    }

    @Test
    void saysWhatIsGoneWithTheLogAndSaysItOnce() throws Exception {
        killed();
        Files.delete(file("-wal"));
        try (Journal journal = open("killed")) {
            assertEquals(10, notes(journal), "what SQLite makes of it");
            assertEquals(
                    "JOURNAL HAS LOST 5 LINES, 2026-05-04 06:00 UTC to 2026-05-04 07:00 UTC",
                    journal.state().brief());
            assertTrue(journal.state().durable(), "it goes on");
            note(journal);
            assertTrue(journal.state().brief().startsWith("JOURNAL HAS LOST 5 LINES"), "until the next start");
        }
        try (Journal journal = open("killed")) {
            assertEquals(JournalState.GOOD, journal.state());
            assertEquals(11, notes(journal));
        }
    }

    /** Wherever a byte of the log is spoilt: each entry is there, or it is said that lines are not. */
    @Test
    void noEntryGoesWithoutAWordWhereverTheLogIsSpoilt() throws Exception {
        killed();
        byte[] log = Files.readAllBytes(file("-wal"));
        byte[] shown = Files.readAllBytes(file(""));
        byte[] lock = Files.readAllBytes(file(".lock"));
        SplittableRandom random = new SplittableRandom(3);
        int lost = 0;
        for (int i = 0; i < 60; i++) {
            byte[] spoilt = log.clone();
            spoilt[i < 32 ? i : random.nextInt(log.length)] ^= 0x40;
            Files.write(file(""), shown);
            Files.write(file("-wal"), spoilt);
            Files.write(file(".lock"), lock);
            Files.deleteIfExists(file("-shm"));
            try (Journal journal = open("killed")) {
                int left = notes(journal);
                lost += left < 15 ? 1 : 0;
                assertEquals(left < 15, journal.state().brief().startsWith("JOURNAL"), left + " " + journal.state());
            }
        }
        assertTrue(lost > 10, lost + " of 60 lost something");
    }

    @Test
    void saysThatTheFileWasTakenAwayOrAnOlderOnePutInItsPlace() throws Exception {
        try (Journal journal = open("killed")) {
            note(journal);
        }
        Files.copy(file(""), dir.resolve("old"));
        try (Journal journal = open("killed")) {
            note(journal);
            note(journal);
        }
        Files.copy(dir.resolve("old"), file(""), StandardCopyOption.REPLACE_EXISTING);
        try (Journal journal = open("killed")) {
            assertTrue(
                    journal.state().brief().startsWith("JOURNAL HAS LOST 2 LINES"),
                    journal.state().brief());
        }
        Files.delete(file(""));
        try (Journal journal = open("killed")) {
            assertTrue(
                    journal.state().brief().matches("JOURNAL HAS LOST 1 LINE, all up to .*"),
                    journal.state().brief());
        }
    }

    @Test
    void aNoteThatCannotBeReadIsNone() throws Exception {
        killed();
        Files.writeString(file(".lock"), "last line 99999999999999999999 at 1 ms\n");
        try (Journal journal = open("killed")) {
            assertEquals(JournalState.GOOD, journal.state());
        }
    }
}
