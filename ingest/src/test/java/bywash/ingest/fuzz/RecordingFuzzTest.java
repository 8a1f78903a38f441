package bywash.ingest.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordingReader;
import bywash.ingest.recording.RecordingWriter;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A spoilt recording: broken lines are told with their number, the others are read, and nothing throws. */
class RecordingFuzzTest {
    private static final int CASES = 1_000 * Integer.getInteger("fuzz.times", 1);
    private static final List<String> GOOD = List.of(
            "{\"time\":\"2026-05-04T06:00:10.000Z\",\"topic\":\"larkfield/sump/level\",\"payload\":\"41.3\",\"qos\":0,\"retain\":false}",
            "{\"tst\":\"2026-05-04T06:00:10.000000+0100\",\"topic\":\"a/b\",\"qos\":1,\"retain\":1,\"payloadlen\":3,\"payload\":{\"a\":[1]}}",
            "{\"time\":\"2026-05-04T06:00:10Z\",\"topic\":\"x\",\"payload64\":\"AP8=\",\"qos\":2,\"retain\":true}",
            "{\"time\":\"2026-05-05T09:00:00.000Z\",\"operator\":\"top-up-start\",\"vessel\":\"sump\",\"source\":\"reserve\",\"volume\":\"160 L\",\"duration\":\"40 min\"}",
            "{\"time\":\"2026-05-05T18:00:00.000Z\",\"operator\":\"batch-fill\",\"vessel\":\"reserve\",\"volume\":\"800 L\"}",
            "{\"time\":\"2026-05-06T07:30:00.000Z\",\"operator\":\"test\",\"vessel\":\"reserve\",\"quantity\":\"total-chlorine\",\"value\":\"0.00 mg/L\"}",
            "{\"time\":\"2026-05-06T07:30:00.000Z\",\"operator\":\"note\",\"text\":\"siphon cleaned\"}");

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void everyLineIsReadOrTold(long seed) throws IOException {
        Mangler mangler = new Mangler(seed);
        int read = 0;
        int told = 0;
        for (int i = 0; i < CASES; i++) {
            byte[] text = text(mangler);
            int[] count = new int[2];
            play(mangler.below(5) == 0 ? mangler.mangle(zipped(text)) : text, count);
            read += count[0];
            told += count[1];
        }
        assertTrue(read > CASES && told > CASES, read + " read, " + told + " told");
    }

    private static byte[] text(Mangler mangler) {
        StringBuilder text = new StringBuilder();
        for (int line = 0; line < 6; line++) {
            text.append(GOOD.get(mangler.below(GOOD.size()))).append('\n');
        }
        return mangler.mangle(text.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** What was read writes and reads again as the same. */
    private static void play(byte[] bytes, int[] count) throws IOException {
        long[] last = {0};
        try (RecordingReader reader = new RecordingReader(new ByteArrayInputStream(bytes), (line, what, right) -> {
            assertTrue(line > last[0], "line numbers must rise");
            last[0] = line;
            Said.plainly(what);
            Said.plainly(right);
            count[1]++;
        })) {
            for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                count[0]++;
                again(line);
            }
        }
    }

    private static void again(RecordedLine line) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        RecordingWriter writer = new RecordingWriter(out);
        writer.write(line);
        writer.flush();
        byte[] first = out.toByteArray();
        try (RecordingReader reader = new RecordingReader(new ByteArrayInputStream(first), (n, what, right) -> {
            throw new AssertionError(what + " in our own line " + new String(first, StandardCharsets.UTF_8));
        })) {
            RecordedLine same = reader.next();
            if (same == null) {
                throw new AssertionError("our own line was lost: " + line);
            }
            ByteArrayOutputStream twice = new ByteArrayOutputStream();
            RecordingWriter second = new RecordingWriter(twice);
            second.write(same);
            second.flush();
            assertEquals(out.toString(StandardCharsets.UTF_8), twice.toString(StandardCharsets.UTF_8));
        }
    }

    private static byte[] zipped(byte[] text) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(text);
        }
        return out.toByteArray();
    }
}
