package bywash.tui.screen;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import bywash.tui.view.EventLog;
import bywash.tui.view.EventLog.Event;
import bywash.tui.view.Frame;
import bywash.tui.view.PastEvents;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A watch that began an hour ago on a journal of 400 days: a note each six hours, low oxygen in each tenth night. */
final class LogFrames {
    private static final Instant BEGAN = Frames.NOW.minus(Duration.ofDays(400));

    private LogFrames() {}

    static Frame recorded(List<Instant> asked) {
        Frame f = Frames.valveOpen();
        EventLog log = new EventLog(new Notes(asked), Frames.NOW.minus(Duration.ofHours(1)));
        log.entry(new OperatorEntry.Note(Frames.NOW.minus(Duration.ofHours(2)), "played again at the start"));
        log.unwatched(Frames.NOW.minusSeconds(3000), Frames.NOW.minusSeconds(9000));
        log.entry(new OperatorEntry.Note(Frames.NOW.minusSeconds(60), "newest"));
        return new Frame(f.snapshot(), f.trends(), log, Frames.NOW, f.losses(), f.safeSources(), "");
    }

    private record Notes(List<Instant> asked) implements PastEvents {
        @Override
        public List<Event> between(Instant from, Instant to) {
            asked.add(from);
            List<Event> events = new ArrayList<>();
            int n = 0;
            for (Instant at = BEGAN; at.isBefore(to); at = at.plus(Duration.ofHours(6))) {
                if (!at.isBefore(from)) {
                    if (n % 40 == 20) {
                        events.add(lowOxygen(at.minusSeconds(1200), AlarmState.UNACKNOWLEDGED));
                        events.add(lowOxygen(at.minusSeconds(600), AlarmState.ACKNOWLEDGED));
                    }
                    events.add(new Event.Entry(new OperatorEntry.Note(at, "note " + n)));
                }
                n++;
            }
            return events;
        }

        private static Event lowOxygen(Instant at, AlarmState state) {
            return new Event.Alarm(new AlarmTransition(
                    at,
                    AlarmKind.LOW_OXYGEN,
                    "fish-tank",
                    state,
                    AlarmKind.LOW_OXYGEN.priority(),
                    "i",
                    "dissolved-oxygen in fish-tank is 4.6 mg/L, under 5.0",
                    Map.of()));
        }

        @Override
        public String beginning() {
            return "The journal begins here.";
        }
    }
}
