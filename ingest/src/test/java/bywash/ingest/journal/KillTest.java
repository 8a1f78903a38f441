package bywash.ingest.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.rules.event.OperatorEntry;
import java.io.BufferedReader;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A writer in a JVM of its own is killed at random moments: whatever it said was kept is there afterwards. */
class KillTest {
    @TempDir
    Path dir;

    @Test
    @Timeout(120)
    void fiveKillsLoseNothingThatWasKept() throws Exception {
        kill(5);
    }

    @Test
    @Tag("slow")
    @Timeout(900)
    void aHundredKillsLoseNothingThatWasKept() throws Exception {
        kill(100);
    }

    private void kill(int times) throws Exception {
        SplittableRandom random = new SplittableRandom(4711);
        Set<String> kept = new HashSet<>();
        for (int round = 0; round < times; round++) {
            Process writer = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-Xmx64m",
                            "-cp",
                            System.getProperty("java.class.path"),
                            Writer.class.getName(),
                            dir.toString(),
                            Integer.toString(round))
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            try (BufferedReader said = writer.inputReader()) {
                int wanted = random.nextInt(1, 200);
                int heard = 0;
                for (String line = said.readLine(); line != null; line = said.readLine()) {
                    kept.add(line);
                    if (++heard == wanted) {
                        writer.toHandle().destroyForcibly(); // which leaves what it said to be read
                    }
                }
                assertTrue(heard >= wanted, "the writer ended by itself after " + heard);
            } finally {
                writer.destroyForcibly().waitFor();
            }
            check(kept);
        }
    }

    private void check(Set<String> kept) throws Exception {
        Set<String> found = new HashSet<>();
        try (Journal journal = Journal.open(dir, "larkfield", InstantSource.system())) {
            assertEquals(JournalState.GOOD, journal.state());
            assertEquals(0, journal.replay(JournalTest.T0, line -> {
                if (line instanceof RecordedLine.Entry e && e.entry() instanceof OperatorEntry.Note note) {
                    found.add(note.text());
                }
            }));
            found.addAll(journal.lastTransitions(1_000_000));
        }
        Set<String> lost = new HashSet<>(kept);
        lost.removeAll(found);
        assertEquals(Set.of(), lost);
    }

    /** Appends without end, and says each entry and each transition once its append has returned. */
    static final class Writer {
        private Writer() {}

        public static void main(String[] arguments) throws Exception {
            try (Journal journal = Journal.open(Path.of(arguments[0]), "larkfield", InstantSource.system())) {
                for (int i = 0; ; i++) {
                    String text = arguments[1] + "-" + i;
                    journal.appendMessages(
                            List.of(JournalTest.message(i, "a", text), JournalTest.message(i, "b", "1")));
                    boolean good = i % 2 == 0
                            ? journal.appendEntry(JournalTest.note(i, text))
                            : journal.appendTransitions(
                                    List.of(new KeptTransition(JournalTest.T0, text, "ph-low", "tank", text)));
                    if (!good) {
                        return;
                    }
                    System.out.println(text);
                }
            }
        }
    }
}
