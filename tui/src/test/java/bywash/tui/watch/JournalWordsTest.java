package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.ingest.journal.Backlog;
import bywash.ingest.journal.Rollup;
import bywash.ingest.journal.Writing;
import bywash.rules.event.OperatorEntry;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class JournalWordsTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");

    private final Backlog backlog = new Backlog(1_000_000);

    @Test
    void nothingIsSaidToBeLostWhereNothingOfTheRecordIs() {
        assertEquals("", JournalWords.unwritten(backlog));
        backlog.add(new Writing.Figures("i-1", "{}"));
        backlog.add(new Writing.Chlorine(T0, "{}"));
        assertEquals("", JournalWords.unwritten(backlog), "these are reckoned anew");
    }

    @Test
    void whatIsLostIsSaidAndNoMore() {
        backlog.add(new Writing.Minute(new Rollup("sump-level", T0, 6, 300, 299, 301)));
        assertEquals("1 minute", JournalWords.unwritten(backlog));
        backlog.add(Writing.Entry.of(new OperatorEntry.Note(T0, "looked at")));
        backlog.add(Writing.Entry.of(new OperatorEntry.Note(T0, "looked at again")));
        assertEquals("2 entries, 1 minute", JournalWords.unwritten(backlog));
    }
}
