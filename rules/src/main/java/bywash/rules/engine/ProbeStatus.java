package bywash.rules.engine;

import bywash.rules.site.Band;
import bywash.rules.site.Probe;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * The latest of one probe.
 *
 * @param value NaN before the first reading; unit as the quantity's
 * @param at time of the reading; null before the first
 * @param band the good band; null where none applies
 * @param perHour trend over the last half hour in units an hour; NaN while unknown
 * @param suspect why the book of probes doubts it: overdue, out of slope, off from tests; empty where it does not
 */
public record ProbeStatus(
        Probe probe,
        double value,
        @Nullable Instant at,
        Health health,
        @Nullable Band band,
        double perHour,
        String suspect) {

    /** A status without doubt. */
    public ProbeStatus(
            Probe probe, double value, @Nullable Instant at, Health health, @Nullable Band band, double perHour) {
        this(probe, value, at, health, band, perHour, "");
    }

    /** Whether the reading can be believed. */
    public enum Health {
        GOOD,
        /** Nothing received yet. */
        WAITING,
        SILENT,
        STUCK,
        IMPLAUSIBLE
    }
}
