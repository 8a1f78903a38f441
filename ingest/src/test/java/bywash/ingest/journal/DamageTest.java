package bywash.ingest.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A journal that somebody or something spoilt: what can be read of it is in the new one, and nothing is played twice. */
class DamageTest {
    private static final Instant T0 = JournalTest.T0;
    private static final int PAGE = 4096;
    private static final int MESSAGES = 5000;

    @TempDir
    Path dir;

    private int second;

    private Path file() {
        return dir.resolve("larkfield.db");
    }

    private Journal open() throws Exception {
        return Journal.open(
                dir, "larkfield", InstantSource.tick(InstantSource.system(), java.time.Duration.ofMillis(1)));
    }

    /** Some hundred pages. */
    private void fill(Journal journal) {
        for (int i = 0; i < MESSAGES / 100; i++) {
            List<RecordedLine.Message> all = new ArrayList<>();
            for (int k = 0; k < 100; k++) {
                all.add(JournalTest.message(++second, "a", "34.1 and some more text to fill pages with"));
            }
            journal.appendMessages(all);
            journal.appendEntry(JournalTest.note(second, "note " + i));
        }
        journal.appendTransitions(List.of(new KeptTransition(T0, "{}", "ph-low", "tank", "stands")));
    }

    private void overwrite(int page) throws Exception {
        try (FileChannel channel = FileChannel.open(file(), StandardOpenOption.WRITE)) {
            byte[] noise = new byte[PAGE];
            new java.util.SplittableRandom(page).nextBytes(noise);
            channel.write(ByteBuffer.wrap(noise), (long) page * PAGE);
        }
    }

    private static List<Instant> replayed(Journal journal) {
        List<Instant> times = new ArrayList<>();
        journal.replay(Instant.EPOCH, line -> times.add(line.time()));
        return times;
    }

    private static int notes(Journal journal) {
        int[] notes = {0};
        journal.replay(Instant.EPOCH, line -> notes[0] += line instanceof RecordedLine.Entry ? 1 : 0);
        return notes[0];
    }

    @Test
    void takesOverWhatCanBeReadRoundASpoiltPage() throws Exception {
        try (Journal journal = open()) {
            fill(journal);
        }
        overwrite((int) (Files.size(file()) / PAGE / 2));
        try (Journal journal = open()) {
            List<Instant> times = replayed(journal);
            assertTrue(times.size() > MESSAGES * 8 / 10, () -> times.size() + " lines");
            assertEquals(times.stream().sorted().toList(), times, "in order, and none twice");
            assertEquals(MESSAGES / 100, notes(journal));
            assertEquals(List.of("stands"), journal.alarms());
            assertEquals(1, journal.begunAnew());
            assertTrue(
                    journal.state()
                            .brief()
                            .startsWith("JOURNAL WAS DAMAGED: a new one holds what could be read, 50 entr"),
                    journal.state().brief());
            assertTrue(journal.appendEntry(JournalTest.note(++second, "goes on")));
        }
        try (Journal journal = open()) {
            assertEquals(JournalState.GOOD, journal.state());
            assertEquals(MESSAGES / 100 + 1, notes(journal));
        }
    }

    @Test
    void anIncidentOfWhichOnlyLaterLinesAreLeftIsListedByThese() throws Exception {
        String line = "{\"alarm\":\"chlorine-risk\",\"state\":\"acknowledged\",\"incident\":\"i-1\"}";
        try (Journal journal = open()) {
            fill(journal);
            journal.appendTransitions(List.of(
                    new KeptTransition(T0, line, "chlorine-risk", "system", "stands", ""),
                    new KeptTransition(T0, line.replace("i-1", ""), "chlorine-risk", "system", "stands", "")));
        }
        overwrite((int) (Files.size(file()) / PAGE / 2));
        List<String> told = new ArrayList<>();
        try (Journal journal = open()) {
            Story story = new Story() {
                @Override
                public void changed(String changed) {
                    told.add(changed);
                }

                @Override
                public void entered(bywash.rules.event.OperatorEntry entry) {
                    // not asked for
                }
            };
            replayed(journal); // the damage is found, and what is left taken over
            assertEquals(1, journal.begunAnew());
            assertEquals(
                    List.of("i-1"),
                    journal.incidents(10, story).stream().map(KeptIncident::id).toList());
        }
        assertEquals(List.of(line), told);
    }

    @Test
    void goesOnWithAFileCutShort() throws Exception {
        try (Journal journal = open()) {
            fill(journal);
        }
        try (FileChannel channel = FileChannel.open(file(), StandardOpenOption.WRITE)) {
            channel.truncate(Files.size(file()) / 2);
        }
        try (Journal journal = open()) {
            List<Instant> times = replayed(journal);
            assertEquals(times.stream().distinct().toList(), times);
            assertEquals(List.of("stands"), journal.alarms(), "its page is one of the first");
            assertTrue(journal.appendEntry(JournalTest.note(++second, "goes on")));
            assertTrue(journal.state().durable(), journal.state().detail());
        }
    }

    @Test
    void isBegunAnewWhereSomebodyEmptiesItWhileItIsWritten() throws Exception {
        try (Journal journal = open()) {
            fill(journal);
            Files.write(file(), new byte[0]);
            Files.write(dir.resolve("larkfield.db-wal"), new byte[0]);
            for (int i = 0; i < 3; i++) {
                journal.appendEntry(JournalTest.note(++second, "after"));
            }
            assertTrue(journal.state().durable(), journal.state().detail());
        }
        try (Journal journal = open()) {
            assertTrue(notes(journal) >= 3, () -> notes(journal) + " notes, " + journal.state());
        }
    }

    @Test
    void isBegunAnewWhereSomebodyTakesItAwayWhileItIsWritten() throws Exception {
        try (Journal journal = open()) {
            fill(journal);
            Files.delete(file());
            assertTrue(journal.appendEntry(JournalTest.note(++second, "after")));
            assertEquals(1, journal.begunAnew());
        }
        try (Journal journal = open()) {
            assertEquals(1, notes(journal));
            assertEquals(JournalState.GOOD, journal.state());
        }
    }

    /** As on a full disk: SQLite cannot make the file it needs beside the journal. */
    @Test
    void remembersWhatItHoldsWhereItCannotBeOpenedForWriting() throws Exception {
        try (Journal journal = open()) {
            fill(journal);
        }
        Path index = Files.createSymbolicLink(dir.resolve("larkfield.db-shm"), dir.resolve("no/such"));
        try (Journal journal = open()) {
            assertTrue(!journal.state().durable());
            assertEquals(List.of("stands"), journal.alarms());
            assertEquals(MESSAGES + MESSAGES / 100, replayed(journal).size());
            assertEquals(T0.plusSeconds(second), journal.lastSeen().orElseThrow());
            Files.delete(index);
            assertTrue(journal.appendEntry(JournalTest.note(++second, "room again")));
            assertEquals(JournalState.GOOD, journal.state());
        }
    }
}
