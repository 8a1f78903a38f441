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
        Duration every) {
    private static final Duration SHORTEST_SILENCE = Duration.ofMinutes(1);

    /** How long without a reading makes the probe silent: three intervals, one minute at least. */
    public Duration silence() {
        Duration three = every.plus(every).plus(every);
        return three.compareTo(SHORTEST_SILENCE) > 0 ? three : SHORTEST_SILENCE;
    }
}
