package bywash.tui.view;

import bywash.tui.view.EventLog.Event;
import java.time.Instant;
import java.util.List;

/** What happened before what is in memory: a journal. Asked from the screen's thread; must not block long. */
public interface PastEvents {
    /** Where no journal is kept. */
    PastEvents NONE = new PastEvents() {
        @Override
        public List<Event> between(Instant from, Instant to) {
            return List.of();
        }

        @Override
        public String beginning() {
            return "No journal is kept here: the log begins where this replay or demo began.";
        }
    };

    /** All from an instant (inclusive) to another (exclusive), oldest first. */
    List<Event> between(Instant from, Instant to);

    /** What stands under the oldest line. */
    String beginning();
}
