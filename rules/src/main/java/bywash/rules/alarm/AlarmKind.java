package bywash.rules.alarm;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The alarms there are, with the priority each has. Order is the order of display within a priority. */
public enum AlarmKind {
    UNPLANNED_INFLOW(Priority.CRITICAL),
    UNPLANNED_LOSS(Priority.CRITICAL),
    OVERFLOW_NEAR(Priority.CRITICAL),
    LINE_NOT_SHUT(Priority.CRITICAL),
    UNSAFE_RELEASE(Priority.CRITICAL),
    CHLORINE_RISK(Priority.CRITICAL),
    LOW_OXYGEN(Priority.CRITICAL),
    PUMP_STOPPED(Priority.HIGH),
    PH_LOW(Priority.HIGH),
    PH_HIGH(Priority.HIGH),
    TEMPERATURE_LOW(Priority.HIGH),
    TEMPERATURE_HIGH(Priority.HIGH),
    TEMPERATURE_SWING(Priority.MEDIUM),
    ORP_LOW(Priority.MEDIUM),
    ORP_RISE(Priority.HIGH),
    AMMONIA_TOXIC(Priority.CRITICAL),
    NITRITE_HIGH(Priority.HIGH),
    BIOFILTER_SETBACK(Priority.HIGH),
    FEED_LOST(Priority.HIGH),
    PROBE_SILENT(Priority.HIGH),
    PROBE_STUCK(Priority.MEDIUM),
    PROBE_IMPLAUSIBLE(Priority.MEDIUM);

    private final Priority priority;
    private final String word;

    AlarmKind(Priority priority) {
        this.priority = priority;
        this.word = name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public Priority priority() {
        return priority;
    }

    /** The kind of a word; empty where there is none. */
    public static Optional<AlarmKind> of(String word) {
        return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
    }

    /** The alarm's word in lines and entries, such as {@code unplanned-inflow}. */
    public String word() {
        return word;
    }
}
