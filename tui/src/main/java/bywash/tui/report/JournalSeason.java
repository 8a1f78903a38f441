package bywash.tui.report;

import bywash.ingest.journal.JournalReader;
import bywash.ingest.site.SiteFile;
import bywash.tui.account.JournalChronicle;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/** A season out of a journal: all but its last days by what the journal adds up of each probe, the last days line by line. */
public final class JournalSeason {
    private static final Duration LINE_BY_LINE = Duration.ofDays(3);
    private static final Instant FAR = Instant.ofEpochSecond(253_402_300_799L);

    private JournalSeason() {}

    /** Empty where the journal is. */
    public static Optional<SeasonData> of(SiteFile file, JournalReader journal) throws IOException {
        Instant first = journal.firstSeen();
        Instant last = journal.lastSeen();
        if (first == null || last == null) {
            return Optional.empty();
        }
        Instant lines = last.minus(LINE_BY_LINE).truncatedTo(ChronoUnit.MINUTES);
        SeasonRun run = new SeasonRun(file);
        try {
            run.past(journal, first, lines);
        } catch (UncheckedIOException e) {
            throw new IOException(e.getMessage(), e);
        }
        journal.lines(lines, FAR, run::accept);
        return run.finish(new JournalChronicle(file, journal).transitions());
    }
}
