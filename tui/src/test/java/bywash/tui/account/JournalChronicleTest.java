package bywash.tui.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;

import bywash.ingest.journal.Journal;
import bywash.ingest.journal.JournalReader;
import bywash.samples.SampleRecordings;
import bywash.tui.watch.JournalOfASample;
import bywash.tui.watch.Larkfield;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalChronicleTest {
    private static final Instant START = SampleRecordings.start();
    private static final Instant END = START.plus(Duration.ofHours(6));

    @TempDir
    Path state;

    private Account account(Instant from, Instant to) throws Exception {
        try (JournalReader journal = JournalReader.open(state, "larkfield")) {
            return new JournalChronicle(Larkfield.site(), journal).account(from, to);
        }
    }

    private static long readings(Account account, String probe) {
        return slices(account, probe).stream().mapToLong(Slice::count).sum();
    }

    private static List<Slice> slices(Account account, String probe) {
        return Objects.requireNonNull(account.readings().get(probe), probe);
    }

    @Test
    void countsEachReadingOnceAlsoWhereTheSpanBeginsBeforeTheJournal() throws Exception {
        new JournalOfASample(state, SampleRecordings.PROBE_SILENT, List.of()).close();
        long exact = readings(account(START, END), "fish-orp");
        assertEquals(exact, readings(account(START.minus(Duration.ofHours(2)), END), "fish-orp"));
    }

    @Test
    void tellsByTheMinutesAndTheStoredAlarmsWhatIsNoLongerKeptLineByLine() throws Exception {
        new JournalOfASample(state, SampleRecordings.VALVE_OPEN, List.of()).close();
        Account whole = account(START, END);
        try (Journal journal = Journal.open(state, "larkfield", () -> END)) {
            journal.prune(END.plusSeconds(1));
        }
        Account pruned = account(START, END);
        assertNull(pruned.reckonedFrom());
        assertEquals(List.of(), pruned.flows());
        assertFalse(whole.flows().isEmpty());
        assertEquals(whole.spells(), pruned.spells());
        assertEquals(whole.entries(), pruned.entries());
        assertEquals(readings(whole, "fish-ph"), readings(pruned, "fish-ph"));
        assertEquals(
                slices(whole, "fish-ph").get(3).mean(),
                slices(pruned, "fish-ph").get(3).mean(),
                1e-9);
    }
}
