package bywash.rules.response;

import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What happened in one incident, in the order it was told; past {@link #MOST} no more is taken in. */
final class IncidentEvents {
    /** So many are kept. */
    static final int MOST = 200;

    private final ZoneId zone;
    private final List<SheetEvent> events = new ArrayList<>();
    private final Map<String, Calls> calls = new HashMap<>();

    /** @param zone of the site, for times in words */
    IncidentEvents(ZoneId zone) {
        this.zone = zone;
    }

    List<SheetEvent> all() {
        return events;
    }

    void add(Instant at, String words) {
        if (events.size() < MOST) {
            events.add(new SheetEvent(at, words));
        }
    }

    /** An alarm of it changed its state, or called again in the same one. */
    void changed(AlarmTransition t) {
        String key = t.kind().word() + " " + t.subject();
        Calls before = calls.get(key);
        if (t.again() && before != null && before.state == t.state()) {
            before.again(t);
        } else {
            calls.put(key, new Calls(t.state()));
            add(t.at(), key + " " + t.state().word() + ": " + t.message());
        }
    }

    /** An alarm that nobody acknowledges calls again and again; that is told once, with how often. */
    private final class Calls {
        private final AlarmState state;
        private @Nullable Instant first;
        private int count;
        private int place = -1;

        Calls(AlarmState state) {
            this.state = state;
        }

        void again(AlarmTransition t) {
            count++;
            Instant at = first == null ? t.at() : first;
            first = at;
            String words = t.kind().word() + " " + t.subject() + " " + state.word() + ", called again"
                    + (count == 1 ? "" : " " + count + " times until " + SiteTime.words(t.at(), zone)) + ": "
                    + t.message();
            if (place >= 0) {
                events.set(place, new SheetEvent(at, words));
            } else if (events.size() < MOST) {
                place = events.size();
                events.add(new SheetEvent(at, words));
            }
        }
    }
}
