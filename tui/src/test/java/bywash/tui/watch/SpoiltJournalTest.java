package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.journal.JournalReader;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.event.OperatorEntry;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.extension.AnnotatedElementContext;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.io.TempDirFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A journal spoilt at seeded places, in its bytes or in its cells: a watch begins on it all the same, keeps what is entered
 * from then on or says that it cannot, and begins again; whoever reads beside it gets answers or one message.
 */
class SpoiltJournalTest {
    private static final int CASES = 50 * Integer.getInteger("fuzz.times", 1);
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");
    private static final Instant END = T0.plus(Duration.ofMinutes(40));
    private static final Instant FAR = Instant.parse("9999-12-31T00:00:00Z");
    private static final String NAME = "larkfield.db";

    @TempDir
    static Path good;

    @TempDir(factory = InMemory.class)
    Path dir;

    /** Where the machine has a file system in memory: thousands of syncs then take no time. */
    static final class InMemory implements TempDirFactory {
        @Override
        public Path createTempDirectory(AnnotatedElementContext element, ExtensionContext context) throws IOException {
            Path memory = Path.of("/dev/shm");
            return Files.isWritable(memory)
                    ? Files.createTempDirectory(memory, "bywash-")
                    : Files.createTempDirectory("bywash-");
        }
    }

    private Instant now = END;

    /** A site of two topics in 40 minutes, with entries and alarms; the journal is left open, so that it has a log beside it. */
    @BeforeAll
    static void aGoodJournal() throws Exception {
        Path work = Files.createDirectory(good.resolve("work"));
        Instant[] clock = {T0};
        Station station = Station.open(Larkfield.site(), work, () -> clock[0]);
        for (int i = 0; i < 240; i++) {
            clock[0] = T0.plusSeconds(10L * i);
            station.watch()
                    .step(List.of(
                            message(clock[0], "larkfield/sump/level", Double.toString(34 + i * 0.05)),
                            message(clock[0], "larkfield/orp", "318")));
            if (i % 60 == 30) {
                station.watch().enter(new OperatorEntry.Note(clock[0], "note " + i));
                station.watch().enter(new OperatorEntry.WaterTest(clock[0], "fish-tank", "nitrite", 0.1 * i));
            }
        }
        Path kept = Files.createDirectory(good.resolve("kept"));
        for (String tail : List.of("", "-wal")) {
            Files.copy(work.resolve(NAME + tail), kept.resolve(NAME + tail));
        }
        station.watch().end();
        Files.copy(work.resolve(NAME), kept.resolve("whole.db"));
        assertTrue(Files.size(kept.resolve("whole.db")) > 40_000, "a journal worth spoiling");
    }

    private static Message message(Instant at, String topic, String payload) {
        return new Message(at, topic, payload.getBytes(StandardCharsets.UTF_8), 1, false);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void spoiltBytes(long seed) throws Exception {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < CASES; i++) {
            Path state = Files.createDirectory(dir.resolve("b" + i));
            Path file = state.resolve(NAME);
            Path kept = good.resolve("kept");
            if (random.nextInt(3) == 0) {
                Files.copy(kept.resolve(NAME), file);
                Files.write(
                        state.resolve(NAME + "-wal"), wounds(random, Files.readAllBytes(kept.resolve(NAME + "-wal"))));
            } else {
                Files.write(file, wounds(random, Files.readAllBytes(kept.resolve("whole.db"))));
            }
            holds("bytes " + seed + "/" + i, state);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void spoiltCells(long seed) throws Exception {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < CASES; i++) {
            Path state = Files.createDirectory(dir.resolve("c" + i));
            Files.copy(good.resolve("kept").resolve("whole.db"), state.resolve(NAME));
            List<String> done = JournalSaboteur.cells(random, state.resolve(NAME));
            holds("cells " + seed + "/" + i + " " + done, state);
        }
    }

    private static byte[] wounds(SplittableRandom random, byte[] good) {
        byte[] bytes = good.clone();
        for (int n = 1 + random.nextInt(4); n > 0 && bytes.length > 0; n--) {
            int at =
                    random.nextInt(4) == 0 ? random.nextInt(Math.min(100, bytes.length)) : random.nextInt(bytes.length);
            int length = Math.min(bytes.length - at, 1 << random.nextInt(13));
            switch (random.nextInt(5)) {
                case 0 -> bytes = java.util.Arrays.copyOf(bytes, at);
                case 1 -> java.util.Arrays.fill(bytes, at, at + length, (byte) 0);
                case 2 -> System.arraycopy(bytes, random.nextInt(bytes.length - length + 1), bytes, at, length);
                case 3 -> {
                    byte[] noise = new byte[length];
                    random.nextBytes(noise);
                    System.arraycopy(noise, 0, bytes, at, length);
                }
                default -> bytes[at] ^= (byte) (1 << random.nextInt(8));
            }
        }
        return bytes;
    }

    private void holds(String what, Path state) throws Exception {
        try {
            assertTimeoutPreemptively(Duration.ofSeconds(60), () -> {
                reads(state);
                watches(state);
                watches(state);
            });
        } catch (Exception | AssertionError e) {
            throw new AssertionError(what, e);
        }
        try (Stream<Path> files = Files.list(state)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
    }

    /** Two rounds with a message and an entry. */
    private void watches(Path state) throws Exception {
        now = now.plusSeconds(60);
        Station station = Station.open(Larkfield.site(), state, () -> now);
        List<CompletableFuture<Boolean>> kept = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            now = now.plusSeconds(10);
            kept.add(station.watch().enter(new OperatorEntry.Note(now, "after")));
            station.watch().step(List.of(message(now, "larkfield/sump/level", "41.0")));
        }
        FrameSource frame = station.watch().latest();
        assertEquals(0, station.watch().faults(), frame.note());
        assertTrue(frame.note().length() < 400 && frame.note().chars().noneMatch(c -> c < ' '), frame.note());
        Instant at = Objects.requireNonNull(frame.snapshot().at());
        assertTrue(!at.isAfter(now) && at.isAfter(now.minusSeconds(8)), "the rules' time is " + at + " at " + now);
        for (CompletableFuture<Boolean> entry : kept) {
            assertTrue(entry.getNow(false) || !frame.note().isEmpty(), "not kept, and nothing said");
        }
        station.past().trends().buckets("sump-level", T0, now, 40);
        station.past().log().between(T0, now);
        station.watch().end();
    }

    /** Answers, or one message. */
    private static void reads(Path state) {
        try (JournalReader journal = JournalReader.open(state, "larkfield")) {
            journal.site();
            journal.firstSeen();
            journal.lastSeen();
            journal.states(Instant.EPOCH, FAR);
            journal.entries(Instant.EPOCH, FAR);
            journal.transitions(Instant.EPOCH, FAR).forEach(AlarmLines::read);
            journal.lines(Instant.EPOCH, FAR, line -> {});
            journal.minutes(T0, END, minute -> {});
            journal.copyTo(state.resolve("copy"));
        } catch (IOException e) {
            String words = String.valueOf(e.getMessage());
            assertTrue(words.contains("journal ") || words.contains("copy "), words);
        }
    }
}
