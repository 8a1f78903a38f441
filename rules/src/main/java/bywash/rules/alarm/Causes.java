package bywash.rules.alarm;

import java.util.EnumSet;
import java.util.Set;

/** Which alarm can follow from which. Common practice, no source. */
final class Causes {
    /** Water on the move; any of these may be seen first. */
    private static final Set<AlarmKind> WATER = EnumSet.of(
            AlarmKind.UNPLANNED_INFLOW,
            AlarmKind.UNPLANNED_LOSS,
            AlarmKind.OVERFLOW_NEAR,
            AlarmKind.LINE_NOT_SHUT,
            AlarmKind.UNSAFE_RELEASE,
            AlarmKind.CHLORINE_RISK);

    private Causes() {}

    static boolean canFollow(AlarmKind effect, AlarmKind cause) {
        return switch (effect) {
            case UNPLANNED_INFLOW, UNPLANNED_LOSS, OVERFLOW_NEAR, LINE_NOT_SHUT, UNSAFE_RELEASE, CHLORINE_RISK ->
                WATER.contains(cause)
                        || (cause == AlarmKind.PUMP_STOPPED && effect == AlarmKind.OVERFLOW_NEAR)
                        || (cause == AlarmKind.ORP_RISE && effect == AlarmKind.CHLORINE_RISK);
            case TEMPERATURE_SWING, TEMPERATURE_LOW, TEMPERATURE_HIGH, PH_HIGH, PH_LOW, ORP_LOW, ORP_RISE ->
                WATER.contains(cause);
            case LOW_OXYGEN -> cause == AlarmKind.PUMP_STOPPED || cause == AlarmKind.CHLORINE_RISK;
            case BIOFILTER_SETBACK, AMMONIA_TOXIC, NITRITE_HIGH ->
                cause == AlarmKind.CHLORINE_RISK || cause == AlarmKind.BIOFILTER_SETBACK;
            case PROBE_SILENT -> cause == AlarmKind.FEED_LOST;
            case PUMP_STOPPED, FEED_LOST, PROBE_STUCK, PROBE_IMPLAUSIBLE -> false;
        };
    }
}
