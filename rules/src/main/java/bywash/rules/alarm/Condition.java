package bywash.rules.alarm;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A true alarm condition, with what the grower needs to know of it.
 *
 * @param message one line: what is wrong
 * @param why evidence
 * @param deadline by when to act; null where none is known
 * @param values for the alarm line
 * @param consequence of this very case if nothing is done; empty where it is that of its kind
 */
public record Condition(
        String message, String why, @Nullable Instant deadline, Map<String, Object> values, String consequence) {
    public Condition {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    /** A condition whose values are given as key, value, key, value. */
    public static Condition of(String message, String why, @Nullable Instant deadline, Object... keyValues) {
        Map<String, Object> values = new LinkedHashMap<>();
        for (int i = 0; i + 1 < keyValues.length; i += 2) {
            values.put((String) keyValues[i], keyValues[i + 1]);
        }
        return new Condition(message, why, deadline, values, "");
    }
}
