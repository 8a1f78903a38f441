package bywash.rules.alarm;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What must be kept of one alarm so that it comes back after a restart as it was.
 *
 * @param raisedAt when its condition was last raised; null where never
 * @param announcedAt when it last called for attention; null where never
 * @param announcements how often it has called since it was raised, 0 or more
 * @param hiddenUntil when shelving ends; null where not shelved
 * @param message what was wrong
 * @param why the evidence then
 */
public record AlarmMemory(
        AlarmKind kind,
        String subject,
        AlarmState state,
        String incident,
        @Nullable Instant raisedAt,
        @Nullable Instant announcedAt,
        int announcements,
        @Nullable Instant hiddenUntil,
        String message,
        String why) {}
