package bywash.tui.view;

import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;

/**
 * Alarm transitions, the grower's entries and times that nobody watched: the latest in memory, bounded, those before out of
 * the journal where there is one. One thread adds, another reads.
 */
public final class EventLog {
    private static final int MOST = 5000;

    /** One thing that happened. */
    public sealed interface Event {
        /** Which of the family it is, so that a switch over it is complete; each kind is one record. */
        enum Kind {
            ALARM,
            ENTRY,
            UNWATCHED
        }

        Kind kind();

        Instant at();

        /** An alarm changed its state. */
        record Alarm(AlarmTransition transition) implements Event {
            @Override
            public Kind kind() {
                return Kind.ALARM;
            }

            @Override
            public Instant at() {
                return transition.at();
            }
        }

        /** The grower entered something. */
        record Entry(OperatorEntry entry) implements Event {
            @Override
            public Kind kind() {
                return Kind.ENTRY;
            }

            @Override
            public Instant at() {
                return entry.at();
            }
        }

        /** A watch began after a time that nobody watched. */
        record Unwatched(Instant at, Instant since) implements Event {
            @Override
            public Kind kind() {
                return Kind.UNWATCHED;
            }
        }
    }

    private final Deque<Event> events = new ArrayDeque<>();
    private final PastEvents past;
    private Instant wholeFrom;
    private long added;

    /** In memory alone. */
    public EventLog() {
        this(PastEvents.NONE, Instant.MIN);
    }

    /** @param from what happened before this instant is asked of the past, whatever is in memory */
    public EventLog(PastEvents past, Instant from) {
        this.past = past;
        this.wholeFrom = from;
    }

    public void alarm(AlarmTransition transition) {
        add(new Event.Alarm(transition));
    }

    public void entry(OperatorEntry entry) {
        add(new Event.Entry(entry));
    }

    /** A watch begins; nobody watched since. */
    public void unwatched(Instant at, Instant since) {
        add(new Event.Unwatched(at, since));
    }

    private synchronized void add(Event event) {
        events.addLast(event);
        added++;
        if (events.size() > MOST) {
            Instant gone = events.removeFirst().at();
            wholeFrom = gone.isBefore(wholeFrom) ? wholeFrom : gone.plusMillis(1);
        }
    }

    /** All in memory, newest first. */
    public synchronized List<Event> newestFirst() {
        List<Event> list = new ArrayList<>(events.size());
        events.descendingIterator().forEachRemaining(list::add);
        return list;
    }

    /** From this instant on all is in memory; what was before is asked of the past. */
    synchronized Instant wholeFrom() {
        return wholeFrom;
    }

    /** All of a span of time, newest first, out of memory and out of the past. */
    public List<Event> between(Instant from, Instant to) {
        Instant whole = wholeFrom();
        List<Event> all = new ArrayList<>();
        for (Event event : newestFirst()) {
            Instant at = event.at();
            if (!at.isBefore(whole) && !at.isBefore(from) && at.isBefore(to)) {
                all.add(event);
            }
        }
        Instant end = to.isBefore(whole) ? to : whole;
        if (from.isBefore(end)) {
            List<Event> older = new ArrayList<>(past.between(from, end));
            Collections.reverse(older);
            all.addAll(older);
        }
        return all;
    }

    /** What stands under the oldest line of all. */
    String beginning() {
        return past.beginning();
    }

    /** How many were ever added; a reader knows by it whether there is anything new. */
    public synchronized long added() {
        return added;
    }
}
