package bywash.tui.report;

import bywash.ingest.journal.JournalReader;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.SiteFile;
import bywash.rules.event.Reading;
import bywash.tui.account.JournalChronicle;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/** A season out of a journal: all but its last days by the minutes of each probe, the last days line by line. */
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
        Instant lines = last.minus(LINE_BY_LINE);
        SeasonRun run = new SeasonRun(file);
        Deque<RecordedLine.Entry> entries = new ArrayDeque<>(journal.entries(Instant.EPOCH, lines));
        journal.minutes(first.minusSeconds(60), lines, minute -> {
            while (!entries.isEmpty() && !entries.getFirst().time().isAfter(minute.minute())) {
                run.remember(entries.removeFirst().entry());
            }
            run.remember(new Reading(minute.probe(), minute.minute(), minute.mean()));
        });
        entries.forEach(e -> run.remember(e.entry()));
        journal.lines(lines, FAR, run::accept);
        return run.finish(new JournalChronicle(file, journal).transitions());
    }
}
