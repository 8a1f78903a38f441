package bywash.ingest.journal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Seven probes, one value each 10 s: a year of minutes and 60 days of messages must stay under 500 MB. */
class JournalSizeTest {
    private static final long MESSAGES_60_DAYS = 7L * 8640 * 60;
    private static final long MINUTES_YEAR = 7L * 1440 * 365;

    @TempDir
    Path dir;

    @Test
    void aYearStaysUnderHalfAGigabyte() throws Exception {
        double message = bytesEach("messages", 70_000, JournalSizeTest::messages);
        double minute = bytesEach("minutes", 70_000, JournalSizeTest::minutes);
        double megabytes = (message * MESSAGES_60_DAYS + minute * MINUTES_YEAR) / 1e6;
        assertTrue(megabytes < 400, message + " bytes a message, " + minute + " a minute, " + megabytes + " MB a year");
    }

    private interface Fill {
        void into(Journal journal, int from, int count);
    }

    private double bytesEach(String id, int count, Fill fill) throws Exception {
        try (Journal journal = Journal.open(dir, id, InstantSource.system())) {
            for (int i = 0; i < count; i += 7000) {
                fill.into(journal, i, 7000);
            }
        }
        return Files.size(dir.resolve(id + ".db")) / (double) count;
    }

    private static void messages(Journal journal, int from, int count) {
        List<RecordedLine.Message> batch = new ArrayList<>();
        for (int i = from; i < from + count; i++) {
            Instant at = JournalTest.T0.plusMillis(i / 7 * 10_000L + i % 7 * 313);
            byte[] payload = Double.toString(40 + i % 97 / 10.0).getBytes(StandardCharsets.UTF_8);
            batch.add(new RecordedLine.Message(at, "larkfield/probe/" + i % 7, payload, 1, false));
        }
        journal.appendMessages(batch);
    }

    private static void minutes(Journal journal, int from, int count) {
        List<Rollup> batch = new ArrayList<>();
        for (int i = from; i < from + count; i++) {
            double v = 40 + i % 97 / 13.0;
            batch.add(new Rollup("probe-" + i % 7, JournalTest.T0.plusSeconds(i / 7 * 60L), 6, v, v - 0.1, v + 0.1));
        }
        journal.appendRollups(batch);
    }
}
