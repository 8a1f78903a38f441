package bywash.rules.event;

import java.time.Instant;

/**
 * One decoded value of one probe.
 *
 * @param value finite, in the fixed unit of the probe's quantity; a level is depth above the floor
 */
public record Reading(String probe, Instant at, double value) {
    public Reading {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("reading of " + probe + ": value " + value + " is not finite");
        }
    }
}
