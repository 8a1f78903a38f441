package bywash.rules.site;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * One probe.
 *
 * @param vessel id of the vessel it stands in
 * @param device for a state probe, what it tells of; else null
 * @param every the interval at which readings are expected, 1 s to 1 day
 */
public record Probe(
        String id,
        String vessel,
        Quantity quantity,
        @Nullable Device device,
        Duration every) {}
