package bywash.rules.alarm;

import java.time.Instant;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One alarm that is not normal, as a screen shows it.
 *
 * @param since when the condition was raised
 * @param why evidence, in words
 * @param consequence what happens if nothing is done
 * @param action what to do now, in order
 * @param deadline by when to act, as last reckoned; null where none is known or the condition no longer holds
 * @param easedAt since when the condition has not held, while its off-delay still runs; null where it holds or is over
 */
public record AlarmView(
        AlarmKind kind,
        String subject,
        AlarmState state,
        Priority priority,
        String incident,
        Instant since,
        String message,
        String why,
        String consequence,
        String action,
        @Nullable Instant deadline,
        Map<String, Object> values,
        @Nullable Instant easedAt) {}
