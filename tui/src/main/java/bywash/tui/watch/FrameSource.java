package bywash.tui.watch;

import bywash.rules.engine.Snapshot;
import java.time.Instant;
import java.util.Set;

/**
 * The latest state of a watch, as handed to screens.
 *
 * @param note words for the head line: a replay's position, a journal's fault; empty when there is nothing to say
 */
public record FrameSource(
        Snapshot snapshot, Instant now, long dropped, long refused, long late, Set<String> safeReserves, String note) {
    public FrameSource {
        safeReserves = Set.copyOf(safeReserves);
    }
}
