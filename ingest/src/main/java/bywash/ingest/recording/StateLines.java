package bywash.ingest.recording;

import java.time.Instant;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Makes lines on the state of the feed and of the watch of the fields of a JSON object. */
final class StateLines {
    private StateLines() {}

    /** Null where the fields are of neither. */
    static @Nullable RecordedLine read(Instant at, Map<String, Object> fields) throws BrokenEntry {
        Object feed = fields.get("feed");
        if (feed != null) {
            if (!feed.equals("up") && !feed.equals("lost")) {
                throw new BrokenEntry("feed \"" + JsonLines.shown(feed.toString()) + "\" is not known", "up or lost");
            }
            return new RecordedLine.Feed(at, feed.equals("up"), Objects.toString(fields.get("detail"), ""));
        }
        Object watch = fields.get("watch");
        if (watch == null) {
            return null;
        }
        Instant since = IsoTime.parse(Objects.toString(fields.get("unwatched-since"), ""));
        if (!watch.equals("started") || since == null || since.isAfter(at)) {
            throw new BrokenEntry(
                    "the line on the watch is not whole", "watch started, and unwatched-since, a time before it");
        }
        return new RecordedLine.WatchStarted(at, since);
    }
}
