package bywash.rules.recovery;

import bywash.rules.water.Nitrification;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;

/** Feed given in the last week, and the ammonia to be expected of it. */
public final class RecentMeals {
    private static final Duration KEEP = Duration.ofDays(7);

    private record Meal(Instant at, double massG, double protein) {}

    private final ArrayDeque<Meal> meals = new ArrayDeque<>();

    /** @param proteinFraction 0 to 1; NaN where not given */
    public void add(Instant at, double massG, double proteinFraction) {
        meals.add(new Meal(at, massG, Double.isNaN(proteinFraction) ? Nitrification.USUAL_PROTEIN : proteinFraction));
        while (!meals.isEmpty() && meals.peek().at().isBefore(at.minus(KEEP))) {
            meals.poll();
        }
    }

    /** Whether anything was fed between two times. */
    boolean any(Instant from, Instant to) {
        return meals.stream().anyMatch(m -> within(m, from, to));
    }

    /**
     * Ammonia nitrogen to be expected a day of what was fed between two times, mg/L a day, if no bacteria took it.
     *
     * @param systemL water that it spreads through, L
     */
    double expectedMgLDay(Instant from, Instant to, double systemL) {
        double days = StrictMath.max(0.25, Duration.between(from, to).toMinutes() / 1440.0);
        double tanG = meals.stream()
                .filter(m -> within(m, from, to))
                .mapToDouble(m -> Nitrification.tanGPerDay(
                        StrictMath.min(1_000_000, m.massG()),
                        StrictMath.max(10, StrictMath.min(70, 100 * m.protein()))))
                .sum();
        return tanG / days / systemL * 1000;
    }

    private static boolean within(Meal meal, Instant from, Instant to) {
        return !meal.at().isBefore(from) && !meal.at().isAfter(to);
    }
}
