package bywash.tui.watch;

import bywash.ingest.recording.RecordedLine;
import bywash.tui.view.Words;
import java.time.Instant;
import java.time.ZoneId;

/** Words for a time that nobody watched. */
final class GapWords {
    private GapWords() {}

    static String of(RecordedLine.WatchStarted started, ZoneId zone) {
        Instant now = started.time();
        return "not watched " + Words.clock(started.unwatchedSince(), now, zone) + " to " + Words.clock(now, now, zone);
    }
}
