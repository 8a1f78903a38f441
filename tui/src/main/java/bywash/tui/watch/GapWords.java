package bywash.tui.watch;

import bywash.ingest.recording.RecordedLine;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Words for a time that nobody watched. */
final class GapWords {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.ROOT);

    private GapWords() {}

    static String of(RecordedLine.WatchStarted started, ZoneId zone) {
        Instant from = started.unwatchedSince();
        boolean today = Duration.between(from, started.time()).compareTo(Duration.ofHours(20)) < 0;
        return "not watched " + (today ? CLOCK : DAY).format(from.atZone(zone)) + " to "
                + CLOCK.format(started.time().atZone(zone));
    }
}
