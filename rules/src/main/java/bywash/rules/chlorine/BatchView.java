package bywash.rules.chlorine;

import bywash.rules.site.Disinfectant;
import bywash.rules.text.Spans;
import bywash.rules.water.FirstOrderLoss;
import bywash.rules.water.LossRate;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * One batch as it stands.
 *
 * @param vessel the reserve
 * @param filledAt when it was last filled; null where no filling is known
 * @param declared whether the grower declared that filling
 * @param volume what the reserve holds, L
 * @param measured whether the volume comes from a level probe
 * @param safety how far it is known to be free of chlorine
 * @param safeAt when it can be expected free of chlorine; null where that is not to be expected
 * @param ammoniaMgL ammonia set free from chloramine by the chemical, mg/L as N
 */
public record BatchView(
        String vessel,
        @Nullable Instant filledAt,
        boolean declared,
        Litres volume,
        boolean measured,
        Residual residual,
        LossRate rate,
        List<BatchStep> steps,
        Safety safety,
        @Nullable SafeAt safeAt,
        double ammoniaMgL,
        String words) {
    private static final double LONGEST_H = 24 * 60;
    private static final int LEARNED_FROM = 2;

    public BatchView {
        steps = List.copyOf(steps);
    }

    /** How far a batch is known to be free of chlorine. */
    public enum Safety {
        /** The mains carries no disinfectant. */
        NO_DISINFECTANT("no disinfectant"),
        /** A test found none since the last filling. */
        CONFIRMED("tested free"),
        /** Even the high end of the estimate is zero; a test is still due. */
        EXPECTED("expected free, test it"),
        /** Still on its way. */
        WAITING("not free"),
        /** Nothing that is on record frees it: chloramine that only stands. */
        NEVER("will not clear by standing"),
        /** No filling or test on record: counts as mains water. */
        UNKNOWN("not known");

        private final String word;

        Safety(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * When it can be expected free of chlorine.
     *
     * @param latest null where the slow end never gets there in 60 days
     */
    public record SafeAt(
            Instant earliest,
            @Nullable Instant likely,
            @Nullable Instant latest) {}

    /**
     * What a batch knows of itself.
     *
     * @param tests of total chlorine since it was last filled or treated that found some
     */
    record Known(
            Disinfectant disinfectant,
            @Nullable Instant filledAt,
            boolean declared,
            Litres volume,
            boolean measured,
            Residual residual,
            LossRate rate,
            Treatment treatment,
            List<BatchStep> steps,
            int tests,
            boolean confirmed,
            double ammoniaMgL) {

        boolean clears() {
            return disinfectant != Disinfectant.CHLORAMINE
                    || treatment.removesChloramine()
                    || steps.stream().anyMatch(s -> s.treatment().removesChloramine());
        }
    }

    static BatchView of(String vessel, Instant at, Known k) {
        Safety safety = safety(k);
        SafeAt safeAt = safety == Safety.WAITING ? safeAt(at, k) : null;
        return new BatchView(
                vessel,
                k.filledAt,
                k.declared,
                k.volume,
                k.measured,
                k.residual,
                k.rate,
                k.steps,
                safety,
                safeAt,
                k.ammoniaMgL,
                words(at, k, safety));
    }

    private static Safety safety(Known k) {
        if (k.disinfectant == Disinfectant.NONE) {
            return Safety.NO_DISINFECTANT;
        }
        if (k.confirmed) {
            return Safety.CONFIRMED;
        }
        if (!k.clears()) {
            return Safety.NEVER;
        }
        if (k.residual.highMgL() <= ReserveBatch.ZERO_MG_L) {
            return Safety.EXPECTED;
        }
        return k.filledAt == null && k.tests == 0 ? Safety.UNKNOWN : Safety.WAITING;
    }

    private static @Nullable SafeAt safeAt(Instant at, Known k) {
        double zero = ReserveBatch.ZERO_MG_L;
        Instant earliest =
                plus(at, FirstOrderLoss.until(k.residual.lowMgL(), zero, k.rate).earliestH());
        Instant likely = plus(
                at, FirstOrderLoss.until(k.residual.likelyMgL(), zero, k.rate).likelyH());
        Instant latest = plus(
                at, FirstOrderLoss.until(k.residual.highMgL(), zero, k.rate).latestH());
        return earliest == null ? null : new SafeAt(earliest, likely, latest);
    }

    private static @Nullable Instant plus(Instant at, double hours) {
        return hours > LONGEST_H ? null : at.plusSeconds(StrictMath.round(hours * 3600));
    }

    private static String ago(Duration since) {
        return Spans.of(since) + " ago";
    }

    private static String words(Instant at, Known k, Safety safety) {
        String filled = k.filledAt == null
                ? "no filling on record"
                : (k.declared ? "filled " : "filled without an entry ") + ago(Duration.between(k.filledAt, at));
        return switch (safety) {
            case NO_DISINFECTANT -> "the mains carries no disinfectant";
            case CONFIRMED -> "tested free of chlorine" + ammonia(k);
            case EXPECTED -> filled + ", expected free of chlorine but not tested" + ammonia(k);
            case UNKNOWN -> "no filling or test on record: it counts as mains water until it is tested";
            case NEVER -> filled + ", chloramine: standing, air and sun do not clear it; needs a chemical or carbon";
            case WAITING ->
                filled + ", " + (k.tests > 0 ? "a test found chlorine" : "not tested free") + "; loss "
                        + (k.tests >= LEARNED_FROM ? "learned from your tests" : "assumed for " + k.treatment.word())
                        + ammonia(k);
        };
    }

    private static String ammonia(Known k) {
        return k.ammoniaMgL < 0.005
                ? ""
                : String.format(Locale.ROOT, "; its chloramine left %.2f mg/L of ammonia nitrogen", k.ammoniaMgL);
    }
}
