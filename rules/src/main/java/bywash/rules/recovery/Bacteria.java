package bywash.rules.recovery;

import bywash.rules.recovery.WaterTests.Test;
import bywash.rules.text.Sentence;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * How the nitrifying bacteria do, judged from two ammonia tests and the feed between them: what feed should have added, less
 * what was found, is what they took.
 *
 * <p>A setback is called where ammonia or nitrite climbs by more than what a kit can err and stands above its limit: total
 * ammonia 1 mg/L, nitrite 1 mg/L (C. Somerville and others, 2014, FAO Technical Paper 589, from memory), or twice the usual
 * of the month before the last day and at least half the limit.
 *
 * @param expectedMgLDay from feed if nothing took it, mg/L a day; NaN where no feed is on record
 * @param climbMgLDay rise of ammonia between the two last tests, mg/L a day; NaN with fewer than two
 * @param setback whether they are set back
 */
public record Bacteria(double expectedMgLDay, double climbMgLDay, boolean setback, String words) {
    /** Above it total ammonia or nitrite counts as elevated, mg/L as N or as the kit says. */
    public static final double LIMIT_MG_L = 1.0;

    private static final double KIT_ERROR_MG_L = 0.2;
    private static final Duration LONGEST = Duration.ofDays(4);
    private static final Duration SHORTEST = Duration.ofHours(6);

    /** Whether a value is elevated against the usual before a time. */
    static boolean elevated(WaterTests tests, String quantity, Test test) {
        double usual = tests.usualBefore(quantity, test.at().minus(Duration.ofDays(1)));
        boolean twice = !Double.isNaN(usual) && test.value() > 2 * usual && test.value() >= LIMIT_MG_L / 2;
        return test.value() > LIMIT_MG_L || twice;
    }

    /** Judged at a time; {@code systemL} is the water that ammonia spreads through. */
    public static Bacteria judge(Instant at, WaterTests tests, RecentMeals feed, double systemL) {
        List<Test> ammonia = tests.since("total-ammonia", at.minus(LONGEST));
        List<Test> nitrite = tests.since("nitrite", at.minus(LONGEST));
        double climb = climbMgLDay(ammonia);
        double expected = Double.NaN;
        if (ammonia.size() >= 2) {
            Instant from = ammonia.get(ammonia.size() - 2).at();
            Instant to = ammonia.get(ammonia.size() - 1).at();
            expected = feed.any(from, to) ? feed.expectedMgLDay(from, to, systemL) : Double.NaN;
        }
        boolean byAmmonia = climbs(tests, "total-ammonia", ammonia);
        boolean byNitrite = climbs(tests, "nitrite", nitrite);
        return new Bacteria(expected, climb, byAmmonia || byNitrite, words(expected, climb, byAmmonia, byNitrite));
    }

    private static boolean climbs(WaterTests tests, String quantity, List<Test> lately) {
        if (lately.size() < 2) {
            return false;
        }
        Test last = lately.get(lately.size() - 1);
        Test before = lately.get(lately.size() - 2);
        return last.value() - before.value() > KIT_ERROR_MG_L && elevated(tests, quantity, last);
    }

    private static double climbMgLDay(List<Test> lately) {
        if (lately.size() < 2) {
            return Double.NaN;
        }
        Test last = lately.get(lately.size() - 1);
        Test before = lately.get(lately.size() - 2);
        Duration span = Duration.between(before.at(), last.at());
        return span.compareTo(SHORTEST) < 0
                ? Double.NaN
                : (last.value() - before.value()) / (span.toMinutes() / 1440.0);
    }

    private static String words(double expected, double climb, boolean byAmmonia, boolean byNitrite) {
        String cause = byAmmonia && byNitrite
                ? "Ammonia and nitrite climb. "
                : byAmmonia ? "Ammonia climbs. " : byNitrite ? "Nitrite climbs. " : "";
        if (Double.isNaN(climb)) {
            return cause + "Two ammonia tests within four days are needed to judge the bacteria.";
        }
        String found = Sentence.of("%sAmmonia moved %+.2f mg/L a day", cause, climb);
        if (Double.isNaN(expected) || expected <= 0) {
            return found + "; no feed is on record to hold it against.";
        }
        double taken = StrictMath.max(0, StrictMath.min(1, 1 - climb / expected));
        return Sentence.of(
                "%s; feed should add %.2f if nothing took it: bacteria and plants took about %.0f %%.",
                found, expected, 100 * taken);
    }
}
