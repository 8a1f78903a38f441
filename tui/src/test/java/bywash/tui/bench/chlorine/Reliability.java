package bywash.tui.bench.chlorine;

import bywash.rules.chlorine.ResidualEstimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** How often the criterion was passed where a probability was said: the reliability table, and the score of G. W. Brier, 1950. */
final class Reliability {
    private static final double[] EDGES = {0, 0.001, 0.01, 0.05, 0.2, 0.4, 0.6, 0.8, 0.95, 1.0001};

    private static final int ENOUGH = 10;

    private Reliability() {}

    /**
     * Prints the table, by minute and by incident: minutes of one incident hang together, so that an incident counts once in each
     * row, by the share of its minutes there that were passed, and the standard error is that of their mean.
     *
     * @param trials the minutes of each incident
     * @return how far each row with ten incidents or more is off, by incident, in points
     */
    static double[] print(String title, List<List<Trial.Minute>> trials) {
        List<Trial.Minute> all = trials.stream().flatMap(List::stream).toList();
        List<Double> off = new ArrayList<>();
        System.out.println("Chance said against how often the criterion was passed: " + title);
        System.out.println("| said, % | mean said, % | passed, % of minutes | minutes"
                + " | passed, % by incident | standard error | incidents |");
        System.out.println("|---|---|---|---|---|---|---|");
        for (int i = 0; i + 1 < EDGES.length; i++) {
            double low = EDGES[i];
            double high = EDGES[i + 1];
            List<Trial.Minute> bin = all.stream().filter(m -> in(m, low, high)).toList();
            List<double[]> each = trials.stream()
                    .map(t -> t.stream().filter(m -> in(m, low, high)).toList())
                    .filter(t -> !t.isEmpty())
                    .map(t -> new double[] {mean(t, Reliability::said), mean(t, Reliability::passed)})
                    .toList();
            double said = each.stream().mapToDouble(e -> e[0]).average().orElse(0);
            double passed = each.stream().mapToDouble(e -> e[1]).average().orElse(0);
            double squares = each.stream()
                    .mapToDouble(e -> (e[1] - passed) * (e[1] - passed))
                    .sum();
            double error = each.size() < 2 ? 1 : Math.sqrt(squares / (each.size() - 1.0) / each.size());
            System.out.printf(
                    Locale.ROOT,
                    "| %.1f to %.1f | %.1f | %.1f | %d | %.1f (said %.1f) | %.1f | %d |%n",
                    100 * low,
                    Math.min(100, 100 * high),
                    100 * mean(bin, Reliability::said),
                    100 * mean(bin, Reliability::passed),
                    bin.size(),
                    100 * passed,
                    100 * said,
                    100 * error,
                    each.size());
            if (each.size() >= ENOUGH) {
                off.add(100 * (passed - said));
            }
        }
        System.out.printf(Locale.ROOT, "Brier score %.4f%n", brier(all));
        return off.stream().mapToDouble(d -> d).toArray();
    }

    private static boolean in(Trial.Minute m, double low, double high) {
        return said(m) >= low && said(m) < high;
    }

    private static double mean(List<Trial.Minute> of, ToDoubleFunction<Trial.Minute> what) {
        return of.stream().mapToDouble(what).average().orElse(0);
    }

    static double brier(List<Trial.Minute> all) {
        return all.stream()
                .mapToDouble(m -> (said(m) - passed(m)) * (said(m) - passed(m)))
                .average()
                .orElse(0);
    }

    private static double said(Trial.Minute m) {
        return m.estimate().probability();
    }

    private static double passed(Trial.Minute m) {
        return m.trueUgL() > ResidualEstimate.ACUTE_UG_L ? 1 : 0;
    }
}
