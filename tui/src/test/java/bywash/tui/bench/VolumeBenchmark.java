package bywash.tui.bench;

import bywash.bench.Budget;
import bywash.rules.detect.FlowFinding;
import bywash.samples.simulation.SiteModel;
import bywash.tui.bench.VolumeTrial.Part;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.LongFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.LongStream;

/**
 * Prints how true the litres of an unplanned inflow are: whether the stated range (two standard errors) holds them, how far
 * off the figure is, and for how long it runs on after the water has stopped. Arguments: first seed, seeds, {@code each}
 * to print every trial; default 501 40. Inflows are of 2 to 12 L/min for 20 to 60 min, shortened so that nothing spills;
 * where the valve is turned, it runs at 3 and 7 L/min for 20 min each.
 */
public final class VolumeBenchmark {
    private static final double MOST_L = 260;
    private static final double COVERAGE = 90;
    private static final Part LITTLE = new Part(3, 20);
    private static final Part MUCH = new Part(7, 20);

    private VolumeBenchmark() {}

    static Map<String, SiteModel> sites() {
        Map<String, SiteModel> sites = new LinkedHashMap<>();
        sites.put("no siphons", Variants.PLAIN);
        sites.put("three beds", Variants.THREE);
        sites.put("Larkfield", SiteModel.larkfield());
        return sites;
    }

    static SiteModel site(String name) {
        return Objects.requireNonNull(sites().get(name), name);
    }

    public static void main(String[] args) {
        long first = args.length > 0 ? Long.parseLong(args[0]) : 501;
        int seeds = args.length > 1 ? Integer.parseInt(args[1]) : 40;
        boolean each = args.length > 2;
        System.out.println("| site | inflows | missed | broke off | range holds, % (budget 90) | held while running, % "
                + "| median error, % | median error, L | median half range, % | runs on, median min | worst min |");
        System.out.println("|---|---|---|---|---|---|---|---|---|---|---|");
        sites().forEach((name, site) -> {
            print(name, first, seeds, each, seed -> VolumeTrial.drawn(site, seed, MOST_L));
            print(name + ", turned up", first, seeds, each, seed -> new VolumeTrial(site, seed, LITTLE, MUCH));
            print(name + ", turned down", first, seeds, each, seed -> new VolumeTrial(site, seed, MUCH, LITTLE));
        });
    }

    private static void print(String name, long first, int seeds, boolean each, LongFunction<VolumeTrial> trial) {
        List<VolumeTrial> trials = LongStream.range(first, first + seeds)
                .parallel()
                .mapToObj(trial)
                .toList();
        if (each) {
            for (int i = 0; i < seeds; i++) {
                System.err.println(name + " " + (first + i) + ": " + trials.get(i));
            }
        }
        System.out.println(row(name, trials));
    }

    private static String row(String name, List<VolumeTrial> all) {
        List<VolumeTrial> found = all.stream().filter(t -> !t.missed()).toList();
        double held = 100.0 * found.stream().filter(VolumeTrial::rangeHolds).count() / found.size();
        Budget.leastAtEnd("litres of a found flow, range holds, " + name, held, COVERAGE, "%");
        return String.format(
                Locale.ROOT,
                "| %s | %d | %d | %d | %.0f%s | %.0f | %.0f | %.0f | %.0f | %.1f | %.1f |",
                name,
                all.size(),
                all.size() - found.size(),
                found.stream().filter(VolumeTrial::brokeOff).count(),
                held,
                held < COVERAGE ? ": missed" : "",
                100
                        * found.stream()
                                .mapToDouble(VolumeTrial::heldWhileRunning)
                                .filter(h -> !Double.isNaN(h))
                                .average()
                                .orElse(Double.NaN),
                median(found, t -> 100 * error(t) / t.truthL()),
                median(found, VolumeBenchmark::error),
                median(found, t -> 200 * said(t).volumeSeL() / t.truthL()),
                median(found, VolumeTrial::runsOnMin),
                found.stream().mapToDouble(VolumeTrial::runsOnMin).max().orElse(Double.NaN));
    }

    private static double error(VolumeTrial trial) {
        return StrictMath.abs(said(trial).volumeL() - trial.truthL());
    }

    private static FlowFinding said(VolumeTrial trial) {
        return Objects.requireNonNull(trial.said());
    }

    private static double median(List<VolumeTrial> trials, ToDoubleFunction<VolumeTrial> of) {
        double[] sorted = trials.stream().mapToDouble(of).sorted().toArray();
        return sorted.length == 0 ? Double.NaN : (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }
}
