package bywash.tui.account;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.SiteFile;
import bywash.rules.alarm.AlarmSpell;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.detect.FlowFinding;
import bywash.rules.engine.Snapshot;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.Reading;
import bywash.tui.watch.Pipeline;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Plays lines through the rules and keeps what belongs to a span; what comes before it only teaches the rules. */
public final class AccountRun {
    private static final Duration EVERY = Duration.ofMinutes(1);

    private final SiteFile file;
    private final Instant from;
    private final Instant to;
    private final Pipeline pipeline;
    private final List<AlarmTransition> transitions = new ArrayList<>();
    private final List<OperatorEntry> entries = new ArrayList<>();
    private final List<ResidualPoint> residual = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();
    private final FlowRuns flows = new FlowRuns();
    private final Slices slices;
    private @Nullable Instant lostSince;
    private @Nullable Instant firstMessage;
    private Instant nextLook;

    /** @param from inclusive, to exclusive */
    public AccountRun(SiteFile file, Instant from, Instant to) {
        this.file = file;
        this.from = from;
        this.to = to;
        this.nextLook = from;
        this.slices = new Slices(Duration.between(from, to));
        this.pipeline = new Pipeline(file, transitions::add, this::reading);
        pipeline.onFlows(this::flows);
    }

    private boolean inside(Instant at) {
        return !at.isBefore(from) && at.isBefore(to);
    }

    private void reading(Reading reading) {
        if (inside(reading.at())) {
            slices.add(reading.probe(), reading.at(), reading.value());
        }
    }

    /** An entry from before all that is played. */
    void remember(OperatorEntry entry) {
        pipeline.remember(entry);
        keep(entry);
    }

    /** A minute of a probe whose messages are no longer kept. */
    void minute(String probe, Instant at, double[] countLowMeanHigh) {
        if (inside(at)) {
            slices.add(probe, at, countLowMeanHigh);
        }
    }

    private void keep(OperatorEntry entry) {
        if (inside(entry.at())) {
            entries.add(entry);
        }
    }

    /** The next line, oldest first; none after the span. */
    void accept(RecordedLine line) {
        switch (line.kind()) {
            case MESSAGE -> firstMessage = firstMessage == null ? line.time() : firstMessage;
            case ENTRY -> keep(((RecordedLine.Entry) line).entry());
            case FEED -> feed((RecordedLine.Feed) line);
            case WATCH_STARTED -> gap(((RecordedLine.WatchStarted) line).unwatchedSince(), line.time(), "not watched");
        }
        pipeline.accept(line);
        look(line.time());
    }

    private void feed(RecordedLine.Feed feed) {
        Instant since = lostSince;
        if (feed.up() && since != null) {
            gap(since, feed.time(), "feed lost");
            lostSince = null;
        } else if (!feed.up() && since == null) {
            lostSince = feed.time();
        }
    }

    private void gap(Instant begin, Instant end, String what) {
        Instant a = begin.isBefore(from) ? from : begin;
        Instant b = end.isAfter(to) ? to : end;
        if (Duration.between(a, b).compareTo(EVERY) >= 0) {
            gaps.add(new Gap(a, b, what));
        }
    }

    private void flows(Instant at, Collection<FlowFinding> findings) {
        if (inside(at)) {
            findings.forEach(finding -> flows.take(finding, at));
        }
    }

    /** Each minute. */
    private void look(Instant now) {
        if (now.isBefore(nextLook) || !inside(now)) {
            return;
        }
        nextLook = now.plus(EVERY);
        ResidualEstimate r = pipeline.snapshot().residual();
        if (!Double.isNaN(r.likelyUgL())) {
            residual.add(new ResidualPoint(now, r.lowUgL(), r.likelyUgL(), r.highUgL()));
        }
    }

    /**
     * Ends the run.
     *
     * @param until how far the time of the record goes
     * @param stored all alarm lines on record, oldest first; null to take those of this run
     */
    Account finish(Instant until, @Nullable List<AlarmTransition> stored) {
        Instant end = until.isBefore(to) ? until : to;
        pipeline.advanceTo(end);
        Instant since = lostSince;
        if (since != null) {
            gap(since, end, "feed lost");
        }
        List<AlarmTransition> history = (stored == null ? transitions : stored)
                .stream().filter(t -> t.at().isBefore(to)).toList();
        Snapshot s = pipeline.snapshot();
        return new Account(
                file.site(),
                from,
                to,
                history,
                AlarmSpell.of(history).stream()
                        .filter(spell -> spell.within(from, to))
                        .toList(),
                List.copyOf(entries),
                flows.all().stream()
                        .filter(f -> f.since().isBefore(to) && !f.until().isBefore(from))
                        .toList(),
                List.copyOf(residual),
                slices.all(),
                List.copyOf(gaps),
                new Account.Care(s.care().sheets(), s.care().suggestions()),
                firstMessage);
    }
}
