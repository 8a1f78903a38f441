package bywash.ingest.feed;

import bywash.rules.event.EngineEvent;
import java.time.Duration;
import java.time.Instant;
import java.util.PriorityQueue;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Puts events in the order of their time and sets ticks between them. An event is held until the time of receipt is more
 * than the lateness past it. A reading older than what has gone out is late: counted, handed to the late callback, not fed.
 * What the grower entered, and changes of the feed, are never dropped: late ones go out at once, in their present place.
 *
 * <p>Ties go by probe id, then by arrival. A tick at T follows all events at T. The time of receipt only comes in by the
 * calls, so the same calls give the same events. Not safe for use by more than one thread.
 */
public final class EventTimeOrder {
    public static final Duration DEFAULT_LATENESS = Duration.ofSeconds(2);
    private static final int MOST_HELD = 200_000;

    private record Held(EngineEvent event, Instant at, String probe, long arrival) implements Comparable<Held> {
        @Override
        public int compareTo(Held other) {
            int order = at.compareTo(other.at);
            if (order == 0) {
                order = probe.compareTo(other.probe);
            }
            return order != 0 ? order : Long.compare(arrival, other.arrival);
        }
    }

    private final Duration lateness;
    private final Consumer<? super EngineEvent> out;
    private final Consumer<? super EngineEvent> late;
    private final PriorityQueue<Held> held = new PriorityQueue<>();
    private final TickClock ticks;
    private @Nullable Instant receipt;
    private @Nullable Instant released;
    private long arrivals;
    private long lateCount;

    /**
     * Makes an order with nothing in it.
     *
     * @param out takes the events in order
     * @param late takes readings that came too late
     */
    public EventTimeOrder(Duration lateness, Consumer<? super EngineEvent> out, Consumer<? super EngineEvent> late) {
        if (lateness.isNegative()) {
            throw new IllegalArgumentException("lateness " + lateness + " must not be negative");
        }
        this.lateness = lateness;
        this.out = out;
        this.late = late;
        this.ticks = new TickClock(out);
    }

    /** Takes an event whose own time is the time of its receipt. */
    public void offer(EngineEvent event) {
        offer(event, event.at());
    }

    /**
     * Takes an event.
     *
     * @param receivedAt when it came in; a probe whose clock runs ahead then does not make the others late
     */
    public void offer(EngineEvent event, Instant receivedAt) {
        String probe = probe(event);
        advanceTo(receivedAt);
        Instant bound = released;
        if (bound != null && event.at().isBefore(bound)) {
            if (!probe.isEmpty()) {
                lateCount++;
                late.accept(event);
            } else {
                out.accept(event);
            }
            return;
        }
        if (held.size() >= MOST_HELD && !probe.isEmpty()) {
            // letting one out before its time would make all others late
            lateCount++;
            late.accept(event);
            return;
        }
        held.add(new Held(event, event.at(), probe, arrivals++));
    }

    /** Whose it is; empty for what must not be dropped. */
    private static String probe(EngineEvent event) {
        return switch (event.kind()) {
            case READING_ARRIVED ->
                ((EngineEvent.ReadingArrived) event).reading().probe();
            case READING_REFUSED -> ((EngineEvent.ReadingRefused) event).probe();
            case OPERATOR_ACTED, FEED_CHANGED, WATCH_STARTED -> "";
            case TICK -> throw new IllegalArgumentException("ticks are made here, not offered");
        };
    }

    /** The time of receipt has reached {@code now}; going back is passed over. */
    public void advanceTo(Instant now) {
        if (receipt != null && !now.isAfter(receipt)) {
            return;
        }
        receipt = now;
        Instant bound = now.minus(lateness);
        releaseBefore(bound);
        if (released == null || bound.isAfter(released)) {
            released = bound;
            ticks.before(bound);
        }
    }

    private void releaseBefore(Instant bound) {
        for (Held first = held.peek(); first != null && first.at().isBefore(bound); first = held.peek()) {
            releaseFirst();
        }
    }

    private void releaseFirst() {
        Held first = held.poll();
        if (first != null) {
            Instant at = first.at();
            if (released == null || at.isAfter(released)) {
                released = at;
            }
            ticks.event(at);
            out.accept(first.event());
        }
    }

    /** The feed has ended: everything held goes out, and the ticks up to the last time seen. */
    public void finish() {
        while (!held.isEmpty()) {
            releaseFirst();
        }
        Instant last = released;
        if (receipt != null && (last == null || receipt.isAfter(last))) {
            last = receipt;
        }
        if (last != null) {
            released = last;
            ticks.before(last.plusNanos(1));
        }
    }

    /** A watch begins at {@code at}: lets out everything held, and makes no ticks for the time before. */
    public void resume(Instant at) {
        finish();
        ticks.resume(at);
    }

    /** The first whole millisecond of receipt at which the next tick goes out; null before the first event. */
    public @Nullable Instant nextTickDue() {
        Instant next = ticks.next();
        return next == null ? null : next.plus(lateness).plusMillis(1);
    }

    /** Readings that came too late so far. */
    public long lateCount() {
        return lateCount;
    }
}
