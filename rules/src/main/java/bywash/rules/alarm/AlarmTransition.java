package bywash.rules.alarm;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One change of one alarm's state: what an alarm line prints.
 *
 * @param incident id shared by alarms with one cause
 * @param values numbers ({@link Double}, with the unit in the key) and words ({@link String}), in order
 */
public record AlarmTransition(
        Instant at,
        AlarmKind kind,
        String subject,
        AlarmState state,
        Priority priority,
        String incident,
        String message,
        Map<String, Object> values) {
    /** Key of the value that says the how-manieth call this is; only from the second on. */
    public static final String ANNOUNCEMENT = "announcement";

    public AlarmTransition {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    /** Whether this is no change but a repeated call of an alarm that stays unacknowledged. */
    public boolean again() {
        return values.containsKey(ANNOUNCEMENT);
    }
}
