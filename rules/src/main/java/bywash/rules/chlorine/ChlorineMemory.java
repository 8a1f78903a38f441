package bywash.rules.chlorine;

import bywash.rules.water.LossFit;
import bywash.rules.water.LossRate;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What is known of chlorine at a time, for a watch that begins there again: readings of before are not played again, and what they
 * showed (an inflow, a filling that nobody entered) must not be forgotten.
 *
 * @param at all of before is in it, nothing of later
 */
public record ChlorineMemory(Instant at, SystemPart system, List<Batch> batches) {
    public ChlorineMemory {
        Objects.requireNonNull(at, "at");
        Objects.requireNonNull(system, "system");
        batches = List.copyOf(batches);
    }

    /**
     * The system's water.
     *
     * @param baseAt of {@code base}
     * @param base residual before the first of what follows
     * @param endedAt up to when inflows into a vessel have been counted
     * @param entered litres that came in since the system was last clean
     * @param ofUnknown whether some of these are of unknown source
     */
    public record SystemPart(
            Instant baseAt,
            Residual base,
            List<BalanceStep.Came> came,
            List<BalanceStep.Tested> tested,
            List<BalanceStep.Dosed> dosed,
            Map<String, Instant> endedAt,
            Litres entered,
            boolean ofUnknown) {
        public SystemPart {
            Objects.requireNonNull(baseAt, "baseAt");
            Objects.requireNonNull(base, "base");
            Objects.requireNonNull(entered, "entered");
            came = List.copyOf(came);
            tested = List.copyOf(tested);
            dosed = List.copyOf(dosed);
            endedAt = Map.copyOf(endedAt);
        }
    }

    /** One reserve; the parts are those of {@link ReserveBatch}. */
    public record Batch(
            String vessel,
            Meter meter,
            List<BatchStep> steps,
            List<LossFit.Test> tests,
            Residual residual,
            LossRate rate,
            Treatment treatment,
            @Nullable Instant asOf,
            @Nullable Instant filledAt,
            @Nullable Instant claimed,
            @Nullable Instant awaited,
            double awaitedL,
            double mixedL,
            double bookedL,
            boolean declared,
            boolean confirmed,
            double ammoniaMgL) {
        public Batch {
            Objects.requireNonNull(vessel, "vessel");
            Objects.requireNonNull(meter, "meter");
            Objects.requireNonNull(residual, "residual");
            Objects.requireNonNull(rate, "rate");
            Objects.requireNonNull(treatment, "treatment");
            steps = List.copyOf(steps);
            tests = List.copyOf(tests);
        }
    }

    /** Its fillings; the parts are those of {@link FillMeter}. */
    public record Meter(
            double volumeL,
            double lowL,
            double peakL,
            Instant peakAt,
            @Nullable Instant riseBegan,
            boolean rising) {
        public Meter {
            Objects.requireNonNull(peakAt, "peakAt");
        }
    }
}
