package bywash.tui.account;

import bywash.ingest.journal.JournalReader;
import bywash.ingest.site.SiteFile;
import bywash.rules.alarm.AlarmTransition;
import bywash.tui.watch.AlarmLines;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * A watch's journal. Alarms are those that the watch raised; water and residual are worked out anew from the readings, as far
 * as these are kept. The days before a span teach the rules, as after a restart.
 */
public final class JournalChronicle implements Chronicle {
    private static final Duration LEAD = Duration.ofDays(3);

    private final SiteFile file;
    private final JournalReader journal;

    public JournalChronicle(SiteFile file, JournalReader journal) {
        this.file = file;
        this.journal = journal;
    }

    @Override
    public String name() {
        return "the journal";
    }

    @Override
    public Reach reach() throws IOException {
        Instant first = journal.firstSeen();
        Instant last = journal.lastSeen();
        if (first == null || last == null) {
            throw new IOException("the journal of " + file.site().id() + " is empty; a watch must run first");
        }
        return new Reach(first, last);
    }

    @Override
    public List<AlarmTransition> transitions() throws IOException {
        return journal.transitions(Instant.EPOCH, Instant.ofEpochSecond(253_402_300_799L)).stream()
                .flatMap(line -> AlarmLines.read(line).stream())
                .toList();
    }

    @Override
    public Account account(Instant from, Instant to) throws IOException {
        AccountRun run = new AccountRun(file, from, to);
        Instant kept = journal.firstMessage();
        Instant lead = from.minus(LEAD);
        journal.entries(Instant.EPOCH, lead).forEach(line -> run.remember(line.entry()));
        if (kept == null || kept.isAfter(from)) {
            journal.minutes(
                    from,
                    kept == null || kept.isAfter(to) ? to : kept.truncatedTo(ChronoUnit.MINUTES),
                    m -> run.minute(m.probe(), m.minute(), new double[] {m.count(), m.low(), m.mean(), m.high()}));
        }
        journal.lines(lead, to, run::accept);
        return run.finish(reach().to(), transitions());
    }
}
