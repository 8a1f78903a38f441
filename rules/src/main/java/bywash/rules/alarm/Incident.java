package bywash.rules.alarm;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Alarms of one cause as one story.
 *
 * @param alarms the first cause on top: what the incident is named after while it stands, then by when they were raised, of
 *     two at once the more urgent
 */
public record Incident(String id, List<AlarmView> alarms) {
    private static final Comparator<AlarmView> FIRST_CAUSE = Comparator.comparing(Incident::followed)
            .thenComparing(AlarmView::since)
            .thenComparing(AlarmView::priority)
            .thenComparing(AlarmView::kind)
            .thenComparing(AlarmView::subject);

    public Incident {
        alarms = alarms.stream().sorted(FIRST_CAUSE).toList();
        if (alarms.isEmpty()) {
            throw new IllegalArgumentException("incident " + id + " has no alarm");
        }
    }

    private static boolean followed(AlarmView alarm) {
        return !alarm.incident().endsWith("-" + alarm.kind().word() + "-" + alarm.subject());
    }

    /** What began it. */
    public AlarmView cause() {
        return alarms.get(0);
    }

    /** The stories of these alarms, in the order in which each has its most urgent alarm. */
    public static List<Incident> of(List<AlarmView> alarms) {
        Map<String, List<AlarmView>> stories = new LinkedHashMap<>();
        for (AlarmView alarm : alarms) {
            stories.computeIfAbsent(alarm.incident(), id -> new ArrayList<>()).add(alarm);
        }
        return stories.entrySet().stream()
                .map(story -> new Incident(story.getKey(), story.getValue()))
                .toList();
    }
}
