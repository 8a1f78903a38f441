package bywash.tui.watch;

import bywash.ingest.journal.Journal;
import bywash.ingest.journal.JournalInUse;
import bywash.ingest.mqtt.FloodLimits;
import bywash.ingest.mqtt.InboundQueue;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.SiteFile;
import bywash.tui.view.EventLog;
import bywash.tui.view.HistorySource;
import bywash.tui.view.TrendBuffer;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;

/**
 * One site under watch, put together: journal, rules brought back to where they were, trends, and the loop that is yet to be
 * started. The loop closes the journal when it ends.
 *
 * @param queue what the feed puts messages into
 * @param outlets who else is told of alarms; add to it before the loop is started
 */
public record Station(
        LiveWatch watch, InboundQueue queue, Past past, Outlets outlets, Restart restart, WatchRecord record) {
    /** What screens show of the past. */
    public record Past(HistorySource trends, EventLog log) {}

    /** Values kept a probe for the small trends: more than an hour at every 5 s. */
    public static final int TREND_VALUES = 1024;

    private static final Duration WORTH_TELLING = Duration.ofMinutes(1);
    /** How long the head line tells of the time that nobody watched. */
    private static final Duration TELL = Duration.ofHours(1);

    /**
     * Opens the journal and goes on where it ends.
     *
     * @param clock whole milliseconds
     * @throws JournalInUse where another watch writes it
     */
    public static Station open(SiteFile file, Path state, InstantSource clock) throws JournalInUse {
        Journal journal = Journal.open(state, file.site().id(), clock);
        return on(file, state, WatchRecord.in(journal), journal, clock);
    }

    /** @param journal in the folder {@code state} */
    static Station on(SiteFile file, Path state, WatchRecord record, Journal journal, InstantSource clock) {
        Outlets outlets = new Outlets(file.site().id(), record);
        TrendBuffer trends = new TrendBuffer(TREND_VALUES);
        Instant now = clock.instant();
        EventLog log = new EventLog(new RecordedEvents(state, file.site().id()), now);
        Pipeline pipeline = new Pipeline(file, outlets.after(log::alarm), reading -> {
            trends.add(reading.probe(), reading.at(), reading.value());
            record.reading(reading);
        });
        pipeline.onEntry(log::entry);
        Restart restart = Restart.from(journal, file.site(), pipeline, now);
        record.goLive(now, restart.unwatchedSince());
        outlets.goLive(pipeline);
        record.standing(outlets::standing);
        RecordedLine.WatchStarted line = restart.line(now);
        InboundQueue queue = new InboundQueue(FloodLimits.of(file));
        LiveWatch watch = new LiveWatch(pipeline, queue, clock, record);
        watch.afterEachEvent(outlets::settle);
        watch.tellOf(() -> queue.flood(clock.instant()));
        if (line != null) {
            watch.beginWith(line);
            log.unwatched(now, line.unwatchedSince());
        }
        if (line != null && Duration.between(line.unwatchedSince(), now).compareTo(WORTH_TELLING) >= 0) {
            watch.gap(line, now.plus(TELL));
        }
        return new Station(
                watch, queue, new Past(new RecordedHistory(trends, record.history()), log), outlets, restart, record);
    }
}
