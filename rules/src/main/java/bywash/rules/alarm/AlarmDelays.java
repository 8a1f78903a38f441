package bywash.rules.alarm;

import java.time.Duration;

/**
 * On-delay and off-delay of each alarm.
 *
 * <p>Starting points are those of ANSI/ISA-18.2 for level and temperature (60 s) and others (15 s to 60 s), from
 * memory. Alarms whose detector weighs evidence itself have no on-delay.
 */
public record AlarmDelays(Duration on, Duration off) {

    public static AlarmDelays of(AlarmKind kind) {
        return switch (kind) {
            case UNPLANNED_INFLOW, UNPLANNED_LOSS, LINE_NOT_SHUT -> seconds(0, 60);
            case OVERFLOW_NEAR -> seconds(10, 1200);
            case UNSAFE_RELEASE, PUMP_STOPPED -> seconds(0, 30);
            case CHLORINE_RISK, AMMONIA_TOXIC, NITRITE_HIGH, BIOFILTER_SETBACK -> seconds(0, 300);
            case LOW_OXYGEN -> seconds(30, 120);
            case PH_LOW, PH_HIGH, TEMPERATURE_LOW, TEMPERATURE_HIGH -> seconds(60, 120);
            case TEMPERATURE_SWING, ORP_LOW -> seconds(300, 600);
            case ORP_RISE -> seconds(600, 300);
            case FEED_LOST -> seconds(30, 5);
            case PROBE_SILENT, PROBE_STUCK, PROBE_IMPLAUSIBLE -> seconds(0, 15);
        };
    }

    private static AlarmDelays seconds(long on, long off) {
        return new AlarmDelays(Duration.ofSeconds(on), Duration.ofSeconds(off));
    }
}
