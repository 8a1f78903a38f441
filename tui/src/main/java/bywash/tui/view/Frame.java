package bywash.tui.view;

import bywash.rules.engine.Snapshot;
import java.time.Instant;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * All that a screen draws from at one moment.
 *
 * @param trends past values of each probe; shared with the loop that feeds it
 * @param log what happened and what was entered; shared likewise
 * @param now the feed's own time, wall clock when live; the time that an entry made now is given
 * @param losses messages that did not reach the rules
 * @param safeSources ids of reserves whose water is known to be safe; empty when nothing is known
 * @param replay words for the top line: a replay's position, what the watch has to say; empty for nothing
 * @param playback where a replay stands; null when live
 */
public record Frame(
        Snapshot snapshot,
        HistorySource trends,
        EventLog log,
        Instant now,
        Losses losses,
        Set<String> safeSources,
        String replay,
        @Nullable Playback playback) {
    public Frame {
        safeSources = Set.copyOf(safeSources);
    }

    /** Live. */
    public Frame(
            Snapshot snapshot,
            HistorySource trends,
            EventLog log,
            Instant now,
            Losses losses,
            Set<String> safeSources,
            String replay) {
        this(snapshot, trends, log, now, losses, safeSources, replay, null);
    }

    /** The same in a replay. */
    public Frame at(Playback where) {
        return new Frame(snapshot, trends, log, now, losses, safeSources, replay, where);
    }

    /** Event time, or the feed's time before the first event. */
    public Instant at() {
        Instant at = snapshot.at();
        return at == null ? now : at;
    }
}
