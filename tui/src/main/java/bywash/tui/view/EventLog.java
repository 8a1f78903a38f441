package bywash.tui.view;

import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/** The latest alarm transitions and the grower's entries, bounded. One thread adds, another reads. */
public final class EventLog {
    private static final int MOST = 5000;

    /** One thing that happened. */
    public sealed interface Event {
        Instant at();

        /** An alarm changed its state. */
        record Alarm(AlarmTransition transition) implements Event {
            @Override
            public Instant at() {
                return transition.at();
            }
        }

        /** The grower entered something. */
        record Entry(OperatorEntry entry) implements Event {
            @Override
            public Instant at() {
                return entry.at();
            }
        }
    }

    private final Deque<Event> events = new ArrayDeque<>();
    private long added;

    public void alarm(AlarmTransition transition) {
        add(new Event.Alarm(transition));
    }

    public void entry(OperatorEntry entry) {
        add(new Event.Entry(entry));
    }

    private synchronized void add(Event event) {
        events.addLast(event);
        added++;
        if (events.size() > MOST) {
            events.removeFirst();
        }
    }

    /** All that is kept, newest first. */
    public synchronized List<Event> newestFirst() {
        List<Event> list = new ArrayList<>(events.size());
        events.descendingIterator().forEachRemaining(list::add);
        return list;
    }

    /** How many were ever added; a reader knows by it whether there is anything new. */
    public synchronized long added() {
        return added;
    }
}
