package bywash.rules.recovery;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Manual tests of the system water of the last sixty days, by quantity, oldest first. */
public final class WaterTests {
    private static final Duration KEEP = Duration.ofDays(60);
    private static final Duration USUAL_OVER = Duration.ofDays(30);

    /** One test; mg/L, or the quantity's unit. */
    public record Test(Instant at, double value) {}

    private final TreeMap<String, List<Test>> byQuantity = new TreeMap<>();

    /** A test was made. */
    public void add(String quantity, Instant at, double value) {
        List<Test> tests = byQuantity.computeIfAbsent(quantity, q -> new ArrayList<>());
        tests.add(new Test(at, value));
        tests.removeIf(t -> t.at().isBefore(at.minus(KEEP)));
    }

    /** Tests of a quantity from a time on. */
    public List<Test> since(String quantity, Instant from) {
        return of(quantity).stream().filter(t -> !t.at().isBefore(from)).toList();
    }

    /** The latest test of a quantity; null where there is none. */
    public @Nullable Test latest(String quantity) {
        List<Test> tests = of(quantity);
        return tests.isEmpty() ? null : tests.get(tests.size() - 1);
    }

    List<Test> of(String quantity) {
        return byQuantity.getOrDefault(quantity, List.of());
    }

    /** Median of the tests in the thirty days before a time; NaN where there is none. */
    double usualBefore(String quantity, Instant at) {
        double[] values = of(quantity).stream()
                .filter(t -> t.at().isBefore(at) && t.at().isAfter(at.minus(USUAL_OVER)))
                .mapToDouble(Test::value)
                .sorted()
                .toArray();
        return values.length == 0 ? Double.NaN : values[values.length / 2];
    }
}
