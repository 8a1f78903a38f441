package bywash.tui.screen;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.tui.view.EventLog;
import bywash.tui.view.Frame;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;

/** A month of alarms: low oxygen most nights, answered late once; one probe that chattered; an inflow. */
final class PerformanceFrames {
    private PerformanceFrames() {}

    static Frame aMonth() {
        Frame f = Frames.quiet();
        EventLog log = new EventLog();
        for (int day = 28; day > 0; day -= 3) {
            Instant at = Frames.NOW.minus(Duration.ofDays(day));
            add(log, at, AlarmKind.LOW_OXYGEN, "fish-tank", AlarmState.UNACKNOWLEDGED);
            add(
                    log,
                    at.plusSeconds(day == 19 ? 2000 : 240),
                    AlarmKind.LOW_OXYGEN,
                    "fish-tank",
                    AlarmState.ACKNOWLEDGED);
            add(log, at.plusSeconds(5400), AlarmKind.LOW_OXYGEN, "fish-tank", AlarmState.NORMAL);
        }
        Instant flap = Frames.NOW.minus(Duration.ofHours(20));
        for (int i = 0; i < 3; i++) {
            add(log, flap.plusSeconds(i * 20L), AlarmKind.PROBE_STUCK, "fish-orp", AlarmState.UNACKNOWLEDGED);
            add(
                    log,
                    flap.plusSeconds(i * 20L + 10),
                    AlarmKind.PROBE_STUCK,
                    "fish-orp",
                    AlarmState.RETURNED_UNACKNOWLEDGED);
        }
        Instant valve = Frames.NOW.minus(Duration.ofHours(9));
        add(log, valve, AlarmKind.UNPLANNED_INFLOW, "sump", AlarmState.UNACKNOWLEDGED);
        add(log, valve.plusSeconds(70), AlarmKind.UNPLANNED_INFLOW, "sump", AlarmState.ACKNOWLEDGED);
        add(log, valve.plusSeconds(900), AlarmKind.UNPLANNED_INFLOW, "sump", AlarmState.NORMAL);
        return new Frame(f.snapshot(), f.trends(), log, Frames.NOW, f.losses(), f.safeSources(), "");
    }

    private static void add(EventLog log, Instant at, AlarmKind kind, String subject, AlarmState state) {
        log.alarm(new AlarmTransition(at, kind, subject, state, kind.priority(), "i", "m", Map.of()));
    }
}
