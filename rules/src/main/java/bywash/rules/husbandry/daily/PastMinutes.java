package bywash.rules.husbandry.daily;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** What the probes read minute by minute, as far back as it is known. Values in the fixed unit of the probe's quantity. */
public interface PastMinutes {
    /** Nothing is known. */
    PastMinutes NONE = new PastMinutes() {
        @Override
        public Optional<Minute> before(String probe, Instant at, Duration within) {
            return Optional.empty();
        }

        @Override
        public double mean(String probe, Instant from, Instant to) {
            return Double.NaN;
        }
    };

    /** @param start of the minute */
    record Minute(Instant start, double mean) {}

    /**
     * The last whole minute with a reading before the one that a time falls into. The minute of the time itself is still
     * running for a watch and over for its journal, so it is left out: both then answer the same.
     *
     * @param within how much earlier it may begin
     */
    Optional<Minute> before(String probe, Instant at, Duration within);

    /** Mean of all readings in the minutes from one time to another, from inclusive, to exclusive; NaN where none is known. */
    double mean(String probe, Instant from, Instant to);
}
