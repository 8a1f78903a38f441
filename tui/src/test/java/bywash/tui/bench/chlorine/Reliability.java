package bywash.tui.bench.chlorine;

import bywash.rules.chlorine.ResidualEstimate;
import java.util.List;
import java.util.Locale;

/** How often the criterion was passed where a probability was said: the reliability table, and the score of G. W. Brier, 1950. */
final class Reliability {
    private static final double[] EDGES = {0, 0.001, 0.01, 0.05, 0.2, 0.4, 0.6, 0.8, 0.95, 1.0001};

    private Reliability() {}

    static void print(String title, List<Trial.Minute> all) {
        System.out.println("Probability said against how often the criterion was passed: " + title);
        for (int i = 0; i + 1 < EDGES.length; i++) {
            double low = EDGES[i];
            double high = EDGES[i + 1];
            List<Trial.Minute> bin =
                    all.stream().filter(m -> said(m) >= low && said(m) < high).toList();
            double above =
                    bin.stream().mapToDouble(Reliability::passed).average().orElse(0);
            double mean = bin.stream().mapToDouble(Reliability::said).average().orElse(0);
            System.out.printf(
                    Locale.ROOT,
                    "said %5.1f to %5.1f %% (mean %5.1f): passed in %5.1f %% of %d min%n",
                    100 * low,
                    Math.min(100, 100 * high),
                    100 * mean,
                    100 * above,
                    bin.size());
        }
        System.out.printf(Locale.ROOT, "Brier score %.4f%n", brier(all));
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
