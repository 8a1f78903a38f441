package bywash.rules.husbandry.probes;

import java.time.Instant;

/**
 * A probe against a manual test of the same water.
 *
 * @param probeValue what the probe read then
 * @param testValue what the test gave
 */
public record TestDifference(Instant at, double probeValue, double testValue) {
    /** Above zero where the probe reads high. */
    public double difference() {
        return probeValue - testValue;
    }
}
