package bywash.tui.bench.chlorine;

import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.bench.Budget;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.chlorine.ResidualEstimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Holds the chance that is said against how often it comes true, over incidents drawn from {@link Draw}. A chance can only be true
 * of a population: of valves alone, or of fouled probes alone, it is out by what sets them apart. Run with {@code mvn -pl tui -am
 * test -Dsurefire.excludedGroups= -Dtest=CalibrationBenchmark -Dsurefire.failIfNoSpecifiedTests=false}.
 */
@Tag("slow")
class CalibrationBenchmark {
    private static final long FIRST = Long.getLong("calibration.first", 5001);
    private static final int SEEDS = Integer.getInteger("calibration.seeds", 200);

    private record Played(Draw draw, Trial trial) {
        /** Minutes by which the warning came before the criterion was passed; NaN where it never was. */
        double lead() {
            double passed = trial.trueAboveMin(ResidualEstimate.ACUTE_UG_L);
            return Double.isInfinite(passed) ? Double.NaN : passed - trial.firstMin(AlarmKind.CHLORINE_RISK);
        }
    }

    @Test
    void aChanceComesTrueAsOftenAsItSays() {
        List<Played> all = LongStream.range(FIRST, FIRST + SEEDS)
                .mapToObj(Draw::of)
                .map(d -> new Played(d, d.trial().play()))
                .toList();
        double[] off = Reliability.print(
                "seeds " + FIRST + " to " + (FIRST + SEEDS - 1),
                all.stream().map(p -> p.trial().minutes()).toList());
        part(
                "mains, potential heard",
                all,
                p -> p.draw.cause() == Draw.Cause.MAINS && p.draw.fault() == OrpResponse.Fault.NONE);
        part(
                "mains, potential silent",
                all,
                p -> p.draw.cause() == Draw.Cause.MAINS && p.draw.fault() == OrpResponse.Fault.SILENT);
        part(
                "mains, potential fouled",
                all,
                p -> p.draw.cause() == Draw.Cause.MAINS && p.draw.fault() == OrpResponse.Fault.FOULED);
        part("rain", all, p -> p.draw.cause() == Draw.Cause.RAIN);
        part("water that has stood", all, p -> p.draw.cause() == Draw.Cause.STOOD);
        part("mains, loss below 0.1 1/h", all, p -> p.draw.cause() == Draw.Cause.MAINS && p.draw.lossPerH() < 0.1);
        part(
                "mains, loss 0.1 to 0.4 1/h",
                all,
                p -> p.draw.cause() == Draw.Cause.MAINS && Math.abs(p.draw.lossPerH() - 0.25) <= 0.15);
        part("mains, loss above 0.4 1/h", all, p -> p.draw.cause() == Draw.Cause.MAINS && p.draw.lossPerH() > 0.4);
        List<Trial.Minute> minutes =
                all.stream().flatMap(p -> p.trial().minutes().stream()).toList();
        double inside =
                Tally.share(minutes.stream().filter(m -> m.trueUgL() > 1).toList());
        Budget.leastAtEnd("residual of drawn incidents inside its range where above 1 ug/L", 100 * inside, 90, "%");
        double worst = java.util.Arrays.stream(off).map(Math::abs).max().orElse(100);
        Budget.mostAtEnd("chance said and come true, drawn incidents, worst row, points", worst, 10, "");
        assertTrue(inside >= 0.9, "inside " + inside);
    }

    private static void part(String name, List<Played> all, Predicate<Played> which) {
        List<Played> part = all.stream().filter(which).toList();
        List<Trial.Minute> wet = part.stream()
                .flatMap(p -> p.trial().minutes().stream())
                .filter(m -> m.trueUgL() > 1)
                .toList();
        List<Double> leads = new ArrayList<>(
                part.stream().map(Played::lead).filter(l -> !Double.isNaN(l)).toList());
        leads.sort(null);
        System.out.printf(
                Locale.ROOT,
                "%s: %d incidents, %.1f %% of %d min above 1 ug/L inside; chlorine-risk in %d; criterion passed in %d, warned of"
                        + " before in %d, never in %d, median lead %.0f min%n",
                name,
                part.size(),
                100 * Tally.share(wet),
                wet.size(),
                part.stream()
                        .filter(p -> p.trial().count(AlarmKind.CHLORINE_RISK) > 0)
                        .count(),
                leads.size(),
                leads.stream().filter(l -> l > 0).count(),
                leads.stream().filter(l -> Double.isInfinite(l)).count(),
                leads.isEmpty() ? Double.NaN : leads.get(leads.size() / 2));
        if (Boolean.getBoolean("calibration.parts")) {
            Reliability.print(name, part.stream().map(p -> p.trial().minutes()).toList());
        }
    }
}
