package bywash.ingest.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.Note;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class MinuteArchiveTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");
    private static final Probe TEMP = new Probe("temp", "tank", Quantity.TEMPERATURE, null, Duration.ofSeconds(30));
    private static final Probe OTHER = new Probe("other", "tank", Quantity.PH, null, Duration.ofSeconds(30));

    @TempDir
    Path dir;

    private static Instant minute(int n) {
        return T0.plusSeconds(60L * n);
    }

    @BeforeEach
    void write() throws Exception {
        try (Journal journal = Journal.open(dir, "site", () -> T0)) {
            journal.appendRollups(List.of(
                    new Rollup("temp", minute(0), 6, 20, 19, 21),
                    new Rollup("temp", minute(1), 2, 24, 23, 25),
                    new Rollup("temp", minute(2), 6, 35, 22, 85), // one value no water has
                    new Rollup("other", minute(1), 6, 7, 7, 7)));
            journal.appendEntry(new Feed(minute(0), 50, 0.32));
            journal.appendMessages(List.of(new Message(minute(90), "t", new byte[0], 0, false)));
            journal.appendEntry(new Note(minute(1), "typed an hour and a half later"));
            journal.appendEntry(new Note(minute(200), "too new"));
        }
    }

    @Test
    void sumsWeighReadingsAndPassOverWhatNoWaterHas() throws Exception {
        try (JournalReader journal = JournalReader.open(dir, "site")) {
            Rollup all = journal.sum(TEMP, T0, minute(10)).orElseThrow();
            assertEquals(new Rollup("temp", T0, 8, 21, 19, 25), all);
            assertEquals(Optional.empty(), journal.sum(TEMP, minute(2), minute(10)));
            assertEquals(
                    minute(1),
                    journal.lastMinute(TEMP, T0, minute(10)).orElseThrow().minute());
            assertEquals(Optional.of(minute(1)), journal.firstMinute(OTHER));
            List<Rollup> each = new ArrayList<>();
            journal.each(TEMP, T0, minute(10), each::add);
            assertEquals(2, each.size());
        }
    }

    @Test
    void anEntryIsKnownToHaveBeenTypedAfterWhatWasStoredBeforeIt() throws Exception {
        try (JournalReader journal = JournalReader.open(dir, "site")) {
            List<MinuteArchive.Kept> kept = journal.keptBefore(minute(120));
            assertEquals(2, kept.size());
            assertEquals(minute(0), kept.get(0).enteredAt());
            assertEquals(minute(1), kept.get(1).entry().at());
            assertEquals(minute(90), kept.get(1).enteredAt());
        }
    }

    @Test
    void aClosedFileIsSaidInWords() throws Exception {
        JournalReader journal = JournalReader.open(dir, "site");
        journal.close();
        var fault = assertThrows(java.io.UncheckedIOException.class, () -> journal.sum(TEMP, T0, minute(10)));
        assertTrue(String.valueOf(fault.getMessage()).contains("cannot be read"), fault.toString());
    }
}
