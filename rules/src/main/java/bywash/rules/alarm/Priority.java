package bywash.rules.alarm;

/** Alarm priority, most urgent first. */
public enum Priority {
    CRITICAL,
    HIGH,
    MEDIUM,
    LOW;

    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
