package bywash.ingest.feed;

import bywash.rules.event.EngineEvent;
import java.time.Instant;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Makes ticks on whole multiples of 5 s of event time, from the first event on. Without events they thin out, so that a gap
 * of any length costs little: after an hour on whole minutes, after a day on whole hours, after 30 days on whole days.
 */
final class TickClock {
    private static final long STEP_S = 5;

    private final Consumer<? super EngineEvent> out;
    private @Nullable Instant lastEvent;
    private long nextS;
    private long lastTickS = Long.MIN_VALUE / 2;

    TickClock(Consumer<? super EngineEvent> out) {
        this.out = out;
    }

    /** Ticks before an event's time, which then starts the gap anew. */
    void event(Instant at) {
        before(at);
        if (lastEvent == null) {
            nextS = multipleFrom(at, STEP_S);
        } else if (at.isAfter(lastEvent)) {
            nextS = Math.min(nextS, Math.max(multipleFrom(at, STEP_S), lastTickS + STEP_S));
        }
        if (lastEvent == null || at.isAfter(lastEvent)) {
            lastEvent = at;
        }
    }

    /** The next tick is at this time or later. */
    void resume(Instant at) {
        nextS = Math.max(multipleFrom(at, STEP_S), lastTickS + STEP_S);
        lastEvent = at;
    }

    /** Makes the ticks whose time is before {@code bound}; none before the first event. */
    void before(Instant bound) {
        Instant from = lastEvent;
        if (from == null) {
            return;
        }
        long endS = wholeS(bound);
        while (nextS < endS) {
            out.accept(new EngineEvent.Tick(Instant.ofEpochSecond(nextS)));
            lastTickS = nextS;
            long step = step(nextS - from.getEpochSecond());
            nextS = Math.floorDiv(nextS, step) * step + step;
        }
    }

    /** When the next tick is; null before the first event. */
    @Nullable
    Instant next() {
        return lastEvent == null ? null : Instant.ofEpochSecond(nextS);
    }

    private static long step(long gapS) {
        if (gapS < 3600) {
            return STEP_S;
        }
        if (gapS < 86_400) {
            return 60;
        }
        return gapS < 30 * 86_400 ? 3600 : 86_400;
    }

    private static long multipleFrom(Instant at, long step) {
        return -Math.floorDiv(-wholeS(at), step) * step;
    }

    /** The first whole second that is not before a time. */
    private static long wholeS(Instant at) {
        return at.getEpochSecond() + (at.getNano() > 0 ? 1 : 0);
    }
}
