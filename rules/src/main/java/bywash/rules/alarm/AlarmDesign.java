package bywash.rules.alarm;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * How an alarm behaves beside its delays.
 *
 * @param latched its harm outlasts its condition: acknowledged before the condition went, it stays until it is acknowledged
 *     once more
 * @param announceAgain how long it stays unacknowledged before it calls again; null for never
 */
public record AlarmDesign(boolean latched, @Nullable Duration announceAgain) {

    /** Common practice, no source. */
    public static AlarmDesign of(AlarmKind kind) {
        return new AlarmDesign(latched(kind), again(kind.priority()));
    }

    private static boolean latched(AlarmKind kind) {
        return switch (kind) {
            case UNPLANNED_INFLOW, LINE_NOT_SHUT, UNSAFE_RELEASE, CHLORINE_RISK -> true;
            case UNPLANNED_LOSS,
                    OVERFLOW_NEAR,
                    LOW_OXYGEN,
                    PUMP_STOPPED,
                    PH_LOW,
                    PH_HIGH,
                    TEMPERATURE_LOW,
                    TEMPERATURE_HIGH,
                    TEMPERATURE_SWING,
                    ORP_LOW,
                    ORP_RISE,
                    AMMONIA_TOXIC,
                    NITRITE_HIGH,
                    BIOFILTER_SETBACK,
                    FEED_LOST,
                    PROBE_SILENT,
                    PROBE_STUCK,
                    PROBE_IMPLAUSIBLE -> false;
        };
    }

    private static @Nullable Duration again(Priority priority) {
        return switch (priority) {
            case CRITICAL -> Duration.ofMinutes(10);
            case HIGH -> Duration.ofMinutes(30);
            case MEDIUM -> Duration.ofHours(2);
            case LOW -> null;
        };
    }
}
