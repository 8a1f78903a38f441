package bywash.rules.alarm;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.function.BooleanSupplier;

/** Gives alarms with one cause one incident id: all that follows from moving water is one story. */
final class Incidents {
    private static final Set<AlarmKind> WATER = EnumSet.of(
            AlarmKind.UNPLANNED_INFLOW,
            AlarmKind.UNPLANNED_LOSS,
            AlarmKind.OVERFLOW_NEAR,
            AlarmKind.LINE_NOT_SHUT,
            AlarmKind.UNSAFE_RELEASE,
            AlarmKind.CHLORINE_RISK,
            AlarmKind.TEMPERATURE_SWING,
            AlarmKind.PH_HIGH);
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private final BooleanSupplier waterAlarmStands;
    private String waterIncident = "";

    /** @param waterAlarmStands whether any alarm of the water family is not normal */
    Incidents(BooleanSupplier waterAlarmStands) {
        this.waterAlarmStands = waterAlarmStands;
    }

    /** The story that was running before a restart. */
    void restore(String incident) {
        waterIncident = incident;
    }

    static boolean isWater(AlarmKind kind) {
        return WATER.contains(kind);
    }

    String assign(AlarmKind kind, String subject, Instant at) {
        String fresh = STAMP.format(at) + "-" + kind.word() + "-" + subject;
        if (!isWater(kind)) {
            return fresh;
        }
        if (waterIncident.isEmpty() || !waterAlarmStands.getAsBoolean()) {
            waterIncident = fresh;
        }
        return waterIncident;
    }
}
