package bywash.ingest.journal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.rules.event.OperatorEntry;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalTest {
    static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");
    private static final InstantSource CLOCK = InstantSource.fixed(T0);

    @TempDir
    Path dir;

    private Path folder() {
        return dir.resolve("state");
    }

    private Journal open() throws JournalInUse {
        return Journal.open(folder(), "larkfield", CLOCK);
    }

    static RecordedLine.Message message(int second, String topic, String payload) {
        return new RecordedLine.Message(
                T0.plusSeconds(second), topic, payload.getBytes(StandardCharsets.UTF_8), 1, second % 2 == 0);
    }

    static OperatorEntry note(int second, String text) {
        return new OperatorEntry.Note(T0.plusSeconds(second), text);
    }

    private static List<RecordedLine> replay(Journal journal, Instant from) {
        List<RecordedLine> all = new ArrayList<>();
        assertEquals(0, journal.replay(from, all::add));
        return all;
    }

    private static String words(RecordedLine line) {
        return line instanceof RecordedLine.Message m
                ? m.topic() + " " + new String(m.payload(), StandardCharsets.UTF_8) + " " + m.qos() + " " + m.retain()
                : ((OperatorEntry.Note) ((RecordedLine.Entry) line).entry()).text();
    }

    @Test
    void playsBackInStoredOrderAfterReopening() throws Exception {
        try (Journal journal = open()) {
            assertTrue(journal.appendMessages(List.of(message(1, "a", "1"), message(2, "b", "2"))));
            assertTrue(journal.appendEntry(note(9, "first")));
            assertTrue(journal.appendMessages(List.of(message(3, "a", "3"))));
        }
        try (Journal journal = open()) {
            assertTrue(journal.appendEntry(note(4, "second")));
            List<RecordedLine> all = replay(journal, Instant.EPOCH);
            assertEquals(
                    List.of("a 1 1 false", "b 2 1 true", "first", "a 3 1 false", "second"),
                    all.stream().map(JournalTest::words).toList());
            assertEquals(T0.plusSeconds(9), all.get(2).time());
            assertEquals(3, replay(journal, T0.plusSeconds(3)).size());
            assertEquals(JournalState.GOOD, journal.state());
        }
    }

    @Test
    void keepsPayloadsThatAreNoText() throws Exception {
        byte[] bytes = {0, -1, 7, -128};
        try (Journal journal = open()) {
            journal.appendMessages(List.of(
                    new RecordedLine.Message(T0, "a", bytes, 2, true),
                    new RecordedLine.Message(T0, "a", new byte[0], 0, false)));
            List<RecordedLine> all = replay(journal, T0);
            assertArrayEquals(bytes, ((RecordedLine.Message) all.get(0)).payload());
            assertEquals(0, ((RecordedLine.Message) all.get(1)).payload().length);
        }
    }

    @Test
    void keepsTheLastTransitionsOldestFirst() throws Exception {
        try (Journal journal = open()) {
            for (int i = 0; i < 5; i++) {
                assertTrue(journal.appendTransitions(
                        List.of(new KeptTransition(T0, "{\"n\":" + i + "}", "ph-low", "tank", "s" + i))));
            }
            assertEquals(List.of("{\"n\":3}", "{\"n\":4}"), journal.lastTransitions(2));
            assertEquals(List.of("s4"), journal.alarms());
        }
    }

    @Test
    void keepsMinutesWhenTheMessagesArePruned() throws Exception {
        Rollup minute = new Rollup("ph", T0, 6, 6.8, 6.7, 6.9);
        try (Journal journal = open()) {
            journal.appendMessages(List.of(message(0, "a", "old"), message(100, "a", "new")));
            journal.appendEntry(note(0, "stays"));
            journal.appendRollups(List.of(minute, new Rollup("ph", T0.plusSeconds(60), 6, 7, 7, 7)));
            assertTrue(journal.prune(T0.plusSeconds(50)));
            assertEquals(
                    List.of("a new 1 true", "stays"),
                    replay(journal, T0).stream().map(JournalTest::words).toList());
            assertEquals(List.of(minute), journal.rollups("ph", T0, T0.plus(Duration.ofSeconds(60))));
            assertEquals(List.of(), journal.rollups("other", T0, T0.plusSeconds(600)));
        }
    }

    @Test
    void refusesASecondWatchInWords() throws Exception {
        try (Journal journal = open()) {
            JournalInUse e = assertThrows(JournalInUse.class, this::open);
            assertEquals(
                    "another watch of larkfield writes the journal in " + folder()
                            + "; stop it, or give this one another folder",
                    e.getMessage());
            assertTrue(journal.appendEntry(note(1, "still ours")));
        }
        open().close();
    }

    @Test
    void isReadableByItsOwnerAlone() throws Exception {
        try (Journal journal = open();
                Stream<Path> files = Files.list(folder())) {
            journal.appendEntry(note(1, "x"));
            assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder())));
            for (Path file : files.toList()) {
                assertEquals(
                        "rw-------",
                        PosixFilePermissions.toString(Files.getPosixFilePermissions(file)),
                        file.toString());
            }
        }
    }

    @Test
    void setsADamagedFileAsideAndBeginsANewOne() throws Exception {
        try (Journal journal = open()) {
            journal.appendEntry(note(1, "x"));
        }
        Path file = folder().resolve("larkfield.db");
        Files.writeString(file, "this is no database, however long one looks at it. ".repeat(200));
        try (Journal journal = open()) {
            Path aside = folder().resolve("larkfield.db.damaged-20260504T060000.000");
            assertEquals(
                    new JournalState(
                            true,
                            "JOURNAL WAS DAMAGED: a new one holds what could be read, 0 entries, 0 alarm lines and 0 messages",
                            "the journal was damaged; it is kept as " + aside
                                    + ", a new one begun with what could be read of it: 0 entries, 0 alarm lines and 0 messages"),
                    journal.state());
            assertTrue(Files.exists(aside));
            assertTrue(journal.appendEntry(note(2, "y")));
            assertEquals(1, replay(journal, T0).size());
        }
    }

    @Test
    void saysThatTheDiskIsFullGoesOnAndRecovers() throws Exception {
        try (Journal journal = open()) {
            journal.appendEntry(note(1, "before"));
            journal.limitPages(1);
            assertFalse(journal.appendMessages(List.of(message(2, "a", "x".repeat(100_000)))));
            assertEquals(
                    new JournalState(
                            false,
                            "disk full, make room",
                            "journal " + folder().resolve("larkfield.db")
                                    + ": the disk is full; make room. The watch goes on in memory"),
                    journal.state());
            assertEquals(1, journal.kept(), "what stood before");
            assertTrue(journal.appendEntry(note(3, "after")), "there is room again");
            assertEquals(JournalState.GOOD, journal.state());
            assertEquals(2, replay(journal, T0).size());
        }
    }

    @Test
    void keepsNothingAndSaysSoWhereTheFolderCannotBe() throws Exception {
        Path file = Files.writeString(dir.resolve("file"), "");
        try (Journal journal = Journal.open(file.resolve("state"), "larkfield", CLOCK)) {
            assertFalse(journal.state().durable());
            assertTrue(journal.state().detail().contains("cannot be used"));
            assertFalse(journal.appendEntry(note(1, "x")));
            assertEquals(0, replay(journal, T0).size());
        }
    }

    @Test
    void aCopyMadeWhileRunningIsWhole() throws Exception {
        Path other = Files.createDirectories(dir.resolve("copy"));
        Path copy = other.resolve("larkfield.db");
        try (Journal journal = open()) {
            journal.appendEntry(note(1, "x"));
            assertTrue(journal.backup(copy));
            assertFalse(journal.backup(copy), "never over a file that stands");
            journal.appendEntry(note(2, "y"));
            assertEquals(JournalState.GOOD, journal.state());
        }
        try (Journal journal = Journal.open(other, "larkfield", CLOCK)) {
            assertEquals(1, replay(journal, T0).size());
        }
    }
}
