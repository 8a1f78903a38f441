package bywash.ingest.journal;

import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Probe;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * What a journal keeps of times whose messages are not played again. A minute with a value that is not possible is passed over
 * whole. Faults are {@link UncheckedIOException} where a file is only read; a watch's own journal says them in its state.
 */
public interface MinuteArchive {
    /**
     * What the grower entered.
     *
     * @param enteredAt when, as far as can be told by what was stored before it; the entry's own time or later
     */
    record Kept(OperatorEntry entry, Instant enteredAt) {}

    /** What was entered of times before this, in the order it was stored. */
    List<Kept> keptBefore(Instant before);

    /** The first minute of a probe; empty where there is none. */
    Optional<Instant> firstMinute(Probe probe);

    /** The last minute of a probe that begins in a span, from inclusive, to exclusive; empty where there is none. */
    Optional<Rollup> lastMinute(Probe probe, Instant from, Instant to);

    /** The minutes of a probe that begin in a span, from inclusive, to exclusive, as one; empty where there is none. */
    Optional<Rollup> sum(Probe probe, Instant from, Instant to);

    /** The minutes of a probe that begin in a span, from inclusive, to exclusive, oldest first. */
    void each(Probe probe, Instant from, Instant to, Consumer<Rollup> sink);
}
