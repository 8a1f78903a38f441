package bywash.tui.report;

import bywash.ingest.journal.MinuteArchive;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.SiteFile;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.engine.Snapshot;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.husbandry.daily.DayValue;
import bywash.rules.husbandry.season.SeasonLedger;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.site.Probe;
import bywash.tui.watch.PastSeason;
import bywash.tui.watch.Pipeline;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Takes the lines of a recording or a journal, oldest first, and gives what the report is made of. */
public final class SeasonRun {
    private final SiteFile file;
    private final Pipeline pipeline;
    private final List<AlarmTransition> transitions = new ArrayList<>();
    private final List<OperatorEntry> entries = new ArrayList<>();
    private @Nullable Instant from;
    private Instant to = Instant.EPOCH;

    public SeasonRun(SiteFile file) {
        this.file = file;
        this.pipeline = new Pipeline(file, transitions::add, reading -> {});
    }

    public void accept(RecordedLine line) {
        from = from == null ? line.time() : from;
        to = line.time().isAfter(to) ? line.time() : to;
        if (line instanceof RecordedLine.Entry entry) {
            entries.add(entry.entry());
        }
        pipeline.accept(line);
    }

    /** All that lies before the lines. */
    void past(MinuteArchive archive, Instant first, Instant lines) {
        from = first;
        PastSeason.tell(archive, file.site(), lines, pipeline, entries::add);
    }

    /** Ends the run with alarm lines that are on record in place of those of the run. */
    Optional<SeasonData> finish(List<AlarmTransition> stored) {
        Optional<SeasonData> data = finish();
        transitions.clear();
        transitions.addAll(stored);
        return data;
    }

    /** Ends the run; empty where there was no line. */
    public Optional<SeasonData> finish() {
        pipeline.finish();
        Instant first = from;
        Snapshot snapshot = pipeline.snapshot();
        SeasonStatus status = snapshot.season();
        if (first == null || status == null) {
            return Optional.empty();
        }
        SeasonLedger book = pipeline.season();
        Map<String, List<DayValue>> days = new LinkedHashMap<>();
        for (Probe probe : file.site().probes()) {
            List<DayValue> values = book.days(probe.id());
            if (!values.isEmpty()) {
                days.put(probe.id(), values);
            }
        }
        List<OperatorEntry> counted = new ArrayList<>(entries);
        counted.removeIf(e -> SeasonLedger.withdrawable(e) || e instanceof Withdraw);
        counted.addAll(book.standing());
        counted.sort(Comparator.comparing(OperatorEntry::at));
        return Optional.of(new SeasonData(
                file.site(), first, to, days, book.tests(), transitions, counted, book.withdrawals(), status));
    }
}
