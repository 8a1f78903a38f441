package bywash.tui.attach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry;
import bywash.tui.view.EventLog;
import bywash.tui.view.Frame;
import bywash.tui.view.Losses;
import bywash.tui.view.TrendBuffer;
import bywash.tui.watch.Larkfield;
import bywash.tui.watch.Pipeline;
import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Callers that send nonsense, nothing, or far too much; the watch must go on and others must still be served. */
@Timeout(60)
class HostileCallerTest {
    private static final String SITE = "larkfield";
    private static final Duration PATIENCE = Duration.ofSeconds(3);

    @TempDir
    Path dir;

    private final List<OperatorEntry> entered = new ArrayList<>();
    private WatchServer server;

    @BeforeEach
    void start() throws Exception {
        Pipeline pipeline = new Pipeline(Larkfield.site(), t -> {}, r -> {});
        Instant now = Instant.parse("2026-05-04T06:00:00Z");
        Frame frame =
                new Frame(pipeline.snapshot(), new TrendBuffer(10), new EventLog(), now, Losses.NONE, Set.of(), "");
        server = WatchServer.start(
                dir,
                SITE,
                new WatchHost() {
                    @Override
                    public Frame frame() {
                        return frame;
                    }

                    @Override
                    public synchronized CompletableFuture<Boolean> enter(OperatorEntry entry) {
                        entered.add(entry);
                        return CompletableFuture.completedFuture(true);
                    }
                },
                PATIENCE);
    }

    private static final long PATIENCE_NANOS = 20_000_000_000L;

    @AfterEach
    void stop() {
        server.close();
    }

    private void stillServes() throws IOException {
        entered.clear();
        enter(System.nanoTime() + PATIENCE_NANOS);
        assertEquals(1, entered.size());
    }

    /** Those who have just hung up may still be counted for a moment. */
    private void enter(long until) throws IOException {
        while (true) {
            try {
                new WatchClient(dir, SITE).enter(new OperatorEntry.Note(Instant.EPOCH, "here"));
                return;
            } catch (IOException e) {
                if (!String.valueOf(e.getMessage()).contains("attached already") || System.nanoTime() > until) {
                    throw e;
                }
                Thread.yield();
            }
        }
    }

    private static byte[] request(SplittableRandom random) {
        byte[] good = (Request.toJson(new Request.Attach(80, 24, true, true)) + "\n").getBytes(StandardCharsets.UTF_8);
        byte[] bytes = random.nextInt(3) == 0 ? new byte[random.nextInt(300)] : good;
        if (bytes != good) {
            random.nextBytes(bytes);
        }
        for (int i = random.nextInt(4); i > 0 && bytes.length > 0; i--) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void anyRequestAndAnyFramesLeaveItServing(long seed) throws Exception {
        SplittableRandom random = new SplittableRandom(seed);
        for (int call = 0; call < 40; call++) {
            try (SocketChannel channel = SocketPlace.connect(dir, SITE)) {
                DataOutputStream out = new DataOutputStream(SocketStreams.output(channel));
                out.write(request(random));
                for (int i = random.nextInt(20); i > 0; i--) {
                    frame(random, out);
                }
            } catch (IOException e) {
                // It hung up on us, which is its right.
            }
        }
        stillServes();
    }

    private static void frame(SplittableRandom random, DataOutputStream out) throws IOException {
        byte[] bytes = new byte[random.nextInt(2000)];
        random.nextBytes(bytes);
        switch (random.nextInt(4)) {
            case 0 -> KeyFrames.keys(out, bytes, bytes.length);
            case 1 -> KeyFrames.size(out, random.nextInt(), random.nextInt());
            case 2 -> KeyFrames.keys(out, ("\u001b[" + "9;".repeat(500)).getBytes(StandardCharsets.US_ASCII), 1002);
            default -> out.write(bytes);
        }
    }

    @Test
    void whoAsksForNothingLosesItsPlace() throws Exception {
        List<SocketChannel> idle = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            idle.add(SocketPlace.connect(dir, SITE));
        }
        for (SocketChannel channel : idle) {
            InputStream in = SocketStreams.input(channel);
            while (in.read() >= 0) {
                // whatever it says before it hangs up
            }
            channel.close();
        }
        stillServes();
    }

    @Test
    void aLineWithoutEndIsCutOff() throws Exception {
        try (SocketChannel channel = SocketPlace.connect(dir, SITE)) {
            byte[] much = "x".repeat(70_000).getBytes(StandardCharsets.US_ASCII);
            try {
                SocketStreams.output(channel).write(much);
            } catch (IOException e) {
                // it had read enough
            }
        }
        stillServes();
    }

    @Test
    void moreKeysThanAnybodyTypesAreLostAndTheScreenGoesOn() throws Exception {
        try (SocketChannel channel = SocketPlace.connect(dir, SITE)) {
            InputStream in = SocketStreams.input(channel);
            DataOutputStream out = new DataOutputStream(SocketStreams.output(channel));
            out.write(
                    (Request.toJson(new Request.Attach(80, 24, false, false)) + "\n").getBytes(StandardCharsets.UTF_8));
            assertTrue(Answer.read(WatchServer.line(in)).good());
            Thread reader = new Thread(() -> drain(in));
            reader.start();
            byte[] keys = "hp".repeat(20_000).getBytes(StandardCharsets.US_ASCII);
            for (int i = 0; i < 20; i++) {
                KeyFrames.keys(out, keys, keys.length);
            }
            stillServes();
            channel.close();
            reader.join();
        }
    }

    private static void drain(InputStream in) {
        try {
            while (in.read(new byte[8192]) >= 0) {
                // shown to nobody
            }
        } catch (IOException e) {
            // closed by us
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {4, 5})
    void anyAnswerEndsInWordsAtTheOtherEnd(long seed) throws Exception {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 2000; i++) {
            byte[] bytes = request(random);
            try {
                Answer answer = Answer.read(WatchServer.line(new ByteArrayInputStream(bytes)));
                assertFalse(answer.good(), "nonsense was taken for a yes");
            } catch (IOException e) {
                assertEquals("the line has no end", e.getMessage());
            }
            KeyFrames.read(new DataInputStream(new ByteArrayInputStream(new byte[] {'k', -1, -1, 1})), sink());
        }
    }

    private static KeyFrames.Sink sink() {
        return new KeyFrames.Sink() {
            @Override
            public void keys(byte[] bytes) {
                throw new AssertionError("a frame cut short was taken for a whole one");
            }

            @Override
            public void size(int columns, int rows) {
                throw new AssertionError("keys were taken for a size");
            }
        };
    }

    @Test
    void refusesAFolderThatAnybodyMayWriteTo() throws Exception {
        Path open = Files.createDirectory(dir.resolve("open"));
        Files.setPosixFilePermissions(open, PosixFilePermissions.fromString("rwxrwxrwx"));
        IOException e = assertThrows(IOException.class, () -> SocketPlace.listen(open, SITE));
        assertEquals("anybody may write to folder " + open + "; close it: chmod 700 " + open, e.getMessage());
    }

    @Test
    void refusesALinkInPlaceOfItsFolder() throws Exception {
        Path state = Files.createDirectory(dir.resolve("state"));
        Files.createSymbolicLink(state.resolve("run"), Files.createDirectory(dir.resolve("elsewhere")));
        IOException e = assertThrows(IOException.class, () -> SocketPlace.listen(state, SITE));
        assertTrue(String.valueOf(e.getMessage()).endsWith("is a link; give --state the folder itself"), e::toString);
    }

    @Test
    void refusesAFolderOfSomebodyElse() throws Exception {
        Path foreign = dir.resolve("foreign");
        Files.createDirectories(foreign.resolve("run"));
        try {
            var other = foreign.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName("nobody");
            Files.setOwner(foreign.resolve("run"), other);
        } catch (IOException e) {
            org.junit.jupiter.api.Assumptions.abort("only the superuser can give a folder away");
        }
        IOException e = assertThrows(IOException.class, () -> SocketPlace.connect(foreign, SITE));
        assertTrue(String.valueOf(e.getMessage()).contains(" belongs to nobody, and this runs as "), e::toString);
        assertThrows(IOException.class, () -> SocketPlace.listen(foreign, SITE));
    }
}
