package bywash.tui.bench.chlorine;

import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.samples.simulation.Action;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Prints how the estimate holds: share of minutes with the truth inside the range, warnings before the criterion is
 * passed, and a reliability table of the probability. Run with
 * {@code mvn -pl tui -am test -Dgroups=slow -DexcludedGroups= -Dtest=ChlorineBenchmark -Dsurefire.failIfNoSpecifiedTests=false}.
 */
@Tag("slow")
class ChlorineBenchmark {
    private static final int SEEDS = 20;
    private static final double AT_MIN = 240;
    private static final int LENGTH_MIN = 480;
    private static final String CHLORINE = "chlorine, residual: 0.9";

    private final List<Trial.Minute> all = new ArrayList<>();

    /** What a variant of the incident is. */
    private enum Variant {
        VALVE,
        CHLORAMINE,
        TREATED,
        RAIN,
        ORP_SILENT,
        ORP_FOULED,
        ORP_LIFTED,
        PEROXIDE
    }

    @Test
    void holdsAgainstTheTruth() {
        int before = 0;
        int passed = 0;
        for (Variant variant : Variant.values()) {
            int inside = 0;
            int count = 0;
            int wet = 0;
            int wetInside = 0;
            int risk = 0;
            int rise = 0;
            StringBuilder leads = new StringBuilder();
            for (long seed = 1; seed <= SEEDS; seed++) {
                Trial trial = trial(variant, seed).play();
                for (Trial.Minute m : trial.minutes()) {
                    all.add(m);
                    count++;
                    inside += m.inside() ? 1 : 0;
                    wet += m.trueUgL() > 1 ? 1 : 0;
                    wetInside += m.trueUgL() > 1 && m.inside() ? 1 : 0;
                }
                double raised = trial.firstMin(AlarmKind.CHLORINE_RISK);
                double above = trial.trueAboveMin(ResidualEstimate.ACUTE_UG_L);
                risk += Double.isInfinite(raised) ? 0 : 1;
                rise += Double.isInfinite(trial.firstMin(AlarmKind.ORP_RISE)) ? 0 : 1;
                if (variant == Variant.VALVE && !Double.isInfinite(above)) {
                    passed++;
                    before += raised < above ? 1 : 0;
                    leads.append(String.format(" %.0f", above - raised));
                }
            }
            System.out.printf(
                    "%-11s inside %.1f %% of %d min, %.1f %% of the %d min above 1 ug/L; chlorine-risk in %d of %d,"
                            + " orp-rise in %d%s%n",
                    variant,
                    100.0 * inside / count,
                    count,
                    wet == 0 ? 100 : 100.0 * wetInside / wet,
                    wet,
                    risk,
                    SEEDS,
                    rise,
                    leads.length() == 0 ? "" : "; lead min" + leads);
        }
        System.out.printf(
                "chlorine-risk before the truth passed 19 ug/L in %d of %d valve incidents%n", before, passed);
        reliability();
        long inside = all.stream().filter(Trial.Minute::inside).count();
        assertTrue(inside >= 0.9 * all.size(), inside + " of " + all.size() + " minutes inside");
    }

    private void reliability() {
        double[] edges = {0, 0.001, 0.01, 0.05, 0.2, 0.4, 0.6, 0.8, 0.95, 1.0001};
        double brier = 0;
        for (Trial.Minute m : all) {
            double miss = m.estimate().probability() - (m.trueUgL() > ResidualEstimate.ACUTE_UG_L ? 1 : 0);
            brier += miss * miss / all.size();
        }
        for (int i = 0; i + 1 < edges.length; i++) {
            double low = edges[i];
            double high = edges[i + 1];
            List<Trial.Minute> bin = all.stream()
                    .filter(m ->
                            m.estimate().probability() >= low && m.estimate().probability() < high)
                    .toList();
            long above = bin.stream()
                    .filter(m -> m.trueUgL() > ResidualEstimate.ACUTE_UG_L)
                    .count();
            double mean = bin.stream()
                    .mapToDouble(m -> m.estimate().probability())
                    .average()
                    .orElse(0);
            System.out.printf(
                    "said %5.1f to %5.1f %% (mean %5.1f): above in %5.1f %% of %d min%n",
                    100 * low, 100 * high, 100 * mean, bin.isEmpty() ? 0 : 100.0 * above / bin.size(), bin.size());
        }
        System.out.printf("Brier score %.4f%n", brier);
    }

    private static Trial trial(Variant variant, long seed) {
        SplittableRandom random = new SplittableRandom(seed * 31 + variant.ordinal());
        double rate = 2 + 4 * random.nextDouble();
        double until = AT_MIN + 20 + 25 * random.nextDouble();
        double strength = 0.9 * (0.6 + 0.7 * random.nextDouble());
        Action valve = new Action.InflowIntoSump(AT_MIN, until, rate, strength);
        return switch (variant) {
            case VALVE -> of(CHLORINE, List.of(valve), seed, OrpResponse.Fault.NONE);
            case CHLORAMINE ->
                of(
                        "chloramine, residual: 2.0",
                        List.of(new Action.InflowIntoSump(AT_MIN, until, rate, strength * 2 / 0.9)),
                        seed,
                        OrpResponse.Fault.NONE);
            case TREATED ->
                of(
                        CHLORINE,
                        List.of(new Action.TestReserve(200, 0), new Action.TopUp(AT_MIN, 25, 5, 0, 0)),
                        seed,
                        OrpResponse.Fault.NONE);
            case RAIN ->
                of(CHLORINE, List.of(new Action.InflowIntoSump(AT_MIN, until, rate, 0)), seed, OrpResponse.Fault.NONE);
            case ORP_SILENT -> of(CHLORINE, List.of(valve), seed, OrpResponse.Fault.SILENT);
            case ORP_FOULED -> of(CHLORINE, List.of(valve), seed, OrpResponse.Fault.FOULED);
            case ORP_LIFTED -> of(CHLORINE, List.of(), seed, OrpResponse.Fault.LIFTED);
            case PEROXIDE -> of(CHLORINE, List.of(), seed, OrpResponse.Fault.PEROXIDE);
        };
    }

    private static Trial of(String mains, List<Action> actions, long seed, OrpResponse.Fault fault) {
        return new Trial(mains, actions, LENGTH_MIN, seed, fault, AT_MIN - 5);
    }
}
