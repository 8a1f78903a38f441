package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.LineJson;
import bywash.ingest.recording.RecordedLine;
import bywash.rules.event.OperatorEntry;
import bywash.tui.view.Frame;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is typed, pasted or sent by a broken terminal, at whatever size: no exception, no entry lost, nothing unfit shown. */
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class KeyFuzzTest {
    private static final int TIMES = Integer.getInteger("fuzz.times", 1);
    private static final List<Supplier<Frame>> FRAMES = List.of(
            Frames::valveOpen,
            Frames::quiet,
            Frames::quietUs,
            Frames::waiting,
            Frames::feedLost,
            SeasonFrames::stocked,
            CareFrames::valveOpen,
            BalanceFrames::learning,
            PerformanceFrames::aMonth,
            SeasonFrames::fishless);
    private static final String ODD =
            "\u0000\u0007\u001b\u007f\u009b\u00a0\u00ad\u0301\u200b\u200e\u202e\u2028\u2066\ud83d\ude00\ufeff\uffff\u0416\u4e2d\ufb01";
    /** What terminals and pastes send, whole and in pieces. */
    private static final List<String> SENT = List.of(
            "\u001b",
            "\u001b[",
            "\u001bO",
            "\u001b[A",
            "\u001b[B",
            "\u001b[1;5C",
            "\u001b[99999999999999999999~",
            "\u001b[;;;;;;;;;;R",
            "\u001b[999;999R",
            "\u001b[<0;10;10M",
            "\u001b[M   ",
            "\u001b[200~pasted\nq\ny\u001b[201~",
            "\u001b]0;title\u0007",
            "\u001bP1$r0m\u001b\\",
            "\u009b2J",
            "\u001b\u001b\u001b",
            "\t\t\r",
            "n\u001b[B\r",
            "\u0001a",
            "mtsn gxb",
            "0.25\t7,8 9",
            "\u202eabc\u2069",
            "e\u0301\ud83d\ude00",
            "\u0000\u0000");

    private final List<OperatorEntry> entries = new ArrayList<>();

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void pressesOnEveryPage(long seed) throws Exception {
        SplittableRandom random = new SplittableRandom(seed);
        for (int sitting = 0; sitting < 6 * TIMES; sitting++) {
            ScreenModel model = new ScreenModel(random.nextBoolean());
            Frame frame = FRAMES.get(random.nextInt(FRAMES.size())).get();
            for (int i = 0; i < 150; i++) {
                int burst = random.nextInt(20) == 0 ? 600 : 1;
                KeyPress key = key(random);
                for (int n = 0; n < burst; n++) {
                    take(model.handle(key, frame));
                }
                look(Screens.draw(frame, model, random.nextInt(4) > 0, size(random, 140), size(random, 50)));
            }
        }
        assertFalse(entries.isEmpty(), "no sitting entered anything");
    }

    private static KeyPress key(SplittableRandom random) {
        return switch (random.nextInt(4)) {
            case 0 -> {
                KeyPress.Kind[] kinds = KeyPress.Kind.values();
                yield KeyPress.of(kinds[random.nextInt(kinds.length)]);
            }
            case 1 -> KeyPress.of(ODD.charAt(random.nextInt(ODD.length())));
            case 2 -> KeyPress.of(random.nextBoolean() ? KeyPress.Kind.ENTER : KeyPress.Kind.DOWN);
            default -> KeyPress.of((char) random.nextInt(' ', 0x7f));
        };
    }

    private static int size(SplittableRandom random, int most) {
        return random.nextInt(3) == 0 ? random.nextInt(1, 6) : random.nextInt(1, most);
    }

    /** What is entered can be kept, and comes back from the record as it went in; half a character does not. */
    private void take(Effect effect) throws Exception {
        if (effect instanceof Effect.Enter enter) {
            assertFalse(enter.entries().isEmpty() || enter.words().isBlank(), "entered nothing, or said nothing");
            for (OperatorEntry entry : enter.entries()) {
                entries.add(entry);
                String kept = LineJson.toJson(new RecordedLine.Entry(entry));
                String again = LineJson.toJson(LineJson.fromJson(kept));
                assertEquals(kept, again);
                assertTrue(kept.length() < 20_000, "an entry without bound");
            }
        }
    }

    private static void look(Picture picture) {
        String text = picture.text();
        assertTrue(
                text.chars()
                        .noneMatch(c ->
                                c != '\n' && (Character.isISOControl(c) || Character.getType(c) == Character.FORMAT)),
                text);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void bytesThroughARealTerminalWhileItsSizeChanges(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        for (int sitting = 0; sitting < 8 * TIMES; sitting++) {
            Frame frame = FRAMES.get(random.nextInt(FRAMES.size())).get();
            ByteArrayOutputStream shown = new ByteArrayOutputStream();
            Typist typist = new Typist(random.split());
            RemoteLine line = new RemoteLine(typist, shown, size(random, 140), size(random, 50));
            typist.line = line;
            new TerminalSession(new DisplaySettings(true, true, false)).run(line, () -> frame, entry -> {
                entries.add(entry);
                return CompletableFuture.completedFuture(true);
            });
            String sent = shown.toString(StandardCharsets.UTF_8);
            assertTrue(sent.contains("\u001b[?1049l") || sent.contains("\u001b[?25h"), "the terminal was not put back");
            // the escape sequences that the library sends: positions, colours, modes, character sets
            String bare = sent.replaceAll("\u001b(\\[[0-9;?]*[ -/]*[@-~]|[()][0-9A-B]|[=>78])", "");
            assertTrue(
                    bare.chars()
                            .noneMatch(c -> c != '\n'
                                    && c != '\r'
                                    && c != 7
                                    && (Character.isISOControl(c) || Character.getType(c) == Character.FORMAT)),
                    () -> "sent something that is neither ours nor text: " + bare);
        }
    }

    /** A keyboard that sends a few thousand bytes in pieces, drags its window about meanwhile, and hangs up. */
    private static final class Typist extends InputStream {
        private final SplittableRandom random;
        private final byte[] all;
        private int next;
        private @Nullable RemoteLine line;

        Typist(SplittableRandom random) {
            this.random = random;
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            for (int i = 0; i < 400; i++) {
                byte[] piece = SENT.get(random.nextInt(SENT.size())).getBytes(StandardCharsets.UTF_8);
                int cut = random.nextInt(4) == 0 ? random.nextInt(piece.length + 1) : piece.length;
                bytes.write(piece, 0, cut);
                if (random.nextInt(4) == 0) {
                    bytes.write(random.nextInt(256));
                }
            }
            all = bytes.toByteArray();
        }

        @Override
        public synchronized int read() {
            RemoteLine window = line;
            if (window != null && random.nextInt(20) == 0) {
                window.resize(random.nextInt(-2, 200), random.nextInt(-2, 80));
            }
            return next < all.length ? all[next++] & 0xff : -1;
        }

        @Override
        public synchronized int read(byte[] into, int offset, int length) {
            int first = length == 0 ? -1 : read();
            if (first < 0) {
                return -1;
            }
            into[offset] = (byte) first;
            return 1;
        }

        @Override
        public synchronized int available() {
            return all.length - next;
        }
    }
}
