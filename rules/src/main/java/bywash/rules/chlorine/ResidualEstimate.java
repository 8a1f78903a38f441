package bywash.rules.chlorine;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Total residual chlorine in the system, as Cl2, ug/L, with its range and evidence.
 *
 * @param probability that the acute criterion is passed, 0 to 1
 * @param acuteAt when the likely value passes the acute criterion at the present rate; null when it does not
 * @param evidence one line each, in words, with the weight
 */
public record ResidualEstimate(
        double lowUgL,
        double likelyUgL,
        double highUgL,
        double probability,
        @Nullable Instant acuteAt,
        List<String> evidence) {
    public ResidualEstimate {
        evidence = List.copyOf(evidence);
    }
}
