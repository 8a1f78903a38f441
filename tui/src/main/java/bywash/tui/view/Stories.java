package bywash.tui.view;

import bywash.rules.alarm.AlarmView;
import bywash.rules.alarm.Incident;
import java.util.ArrayList;
import java.util.List;

/**
 * The alarms as they are listed: incident by incident, the most urgent before the others; in each the first cause on top
 * and what followed from it beneath.
 */
public final class Stories {
    private Stories() {}

    public static List<AlarmView> alarms(Frame frame) {
        return incidents(frame).stream().flatMap(i -> i.alarms().stream()).toList();
    }

    /** How many incidents the alarms belong to. */
    static int count(Frame frame) {
        return incidents(frame).size();
    }

    static List<AlarmLine> lines(Frame frame) {
        List<AlarmLine> lines = new ArrayList<>();
        for (Incident incident : incidents(frame)) {
            for (AlarmView alarm : incident.alarms()) {
                lines.add(AlarmLine.from(alarm, frame, !alarm.equals(incident.cause())));
            }
        }
        return lines;
    }

    /** The incident that an alarm belongs to. */
    static Incident of(AlarmView alarm, Frame frame) {
        return incidents(frame).stream()
                .filter(i -> i.id().equals(alarm.incident()))
                .findFirst()
                .orElseGet(() -> new Incident(alarm.incident(), List.of(alarm)));
    }

    private static List<Incident> incidents(Frame frame) {
        return Incident.of(frame.snapshot().alarms());
    }
}
