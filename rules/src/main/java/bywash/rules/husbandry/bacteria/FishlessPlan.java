package bywash.rules.husbandry.bacteria;

import bywash.rules.water.UnionisedAmmonia;
import bywash.rules.water.Valid;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the bacteria alive without fish: how much ammonia nitrogen to add now, and which tests are due.
 *
 * <p>Aim at 1 to 2 mg/L of total ammonia nitrogen and never pass 3 to 4: FAO Technical Paper 589 (2014), section 5.4, from memory. Free
 * ammonia from 0.1 to 1 mg/L holds back the bacteria that take nitrite: A. C. Anthonisen and others, 1976, J. Water Pollut. Control
 * Fed. 48:835-852, from memory.
 *
 * @param nitrogenG nitrogen to add now, g; 0 where none is to be added
 * @param toMgL total ammonia nitrogen expected after, mg/L
 * @param freeMgL un-ionised part of that, mg/L; NaN where pH or temperature are not known
 * @param words what to do and why
 * @param testsDue tests to make, most urgent first
 */
public record FishlessPlan(double nitrogenG, double toMgL, double freeMgL, String words, List<String> testsDue) {
    private static final double TARGET_MG_L = 2;
    private static final double ENOUGH_MG_L = 1;
    private static final double NITRITE_HOLD_MG_L = 5;
    private static final double FREE_HOLD_MG_L = 0.1;
    /** How often ammonia and nitrite are to be tested without fish. Common practice, no source. */
    public static final Duration TEST_EVERY = Duration.ofDays(2);

    public FishlessPlan {
        testsDue = List.copyOf(testsDue);
    }

    /** What is known of the water: latest tests with their times, pH and temperature; NaN and null where not known. */
    public record Known(
            double tanMgL,
            @Nullable Instant tanAt,
            double nitriteMgL,
            @Nullable Instant nitriteAt,
            double ph,
            double temperatureC) {}

    /**
     * Plans the next dose.
     *
     * @param volumeL of the loop (L, above 0, at most 10 000 000)
     */
    public static FishlessPlan of(double volumeL, Known known, Instant now) {
        Valid.positive("volumeL", volumeL, 1e7, "L");
        List<String> due = testsDue(known, now);
        boolean tested = known.tanAt() != null && !old(known.tanAt(), now);
        if (!tested) {
            return new FishlessPlan(0, Double.NaN, Double.NaN, "Test ammonia first: nothing is dosed blind.", due);
        }
        if (known.nitriteMgL() > NITRITE_HOLD_MG_L) {
            String words = String.format(
                    Locale.ROOT,
                    "Nitrite is %.1f mg/L, above %.0f: add nothing until it falls.",
                    known.nitriteMgL(),
                    NITRITE_HOLD_MG_L);
            return new FishlessPlan(0, known.tanMgL(), free(known, known.tanMgL()), words, due);
        }
        if (known.tanMgL() >= ENOUGH_MG_L) {
            String words = String.format(
                    Locale.ROOT,
                    "Ammonia is %.1f mg/L: enough, add nothing. Dose again when it is under %.0f.",
                    known.tanMgL(),
                    ENOUGH_MG_L);
            return new FishlessPlan(0, known.tanMgL(), free(known, known.tanMgL()), words, due);
        }
        return dose(volumeL, known, due);
    }

    private static FishlessPlan dose(double volumeL, Known known, List<String> due) {
        double target = TARGET_MG_L;
        double free = free(known, target);
        String held = "";
        if (free > FREE_HOLD_MG_L) {
            target = Math.max(known.tanMgL(), TARGET_MG_L * FREE_HOLD_MG_L / free);
            free = free(known, target);
            held = String.format(
                    Locale.ROOT,
                    " Less than the usual 2 mg/L: at pH %.1f more would hold the nitrite takers back.",
                    known.ph());
        }
        double nitrogenG = (target - known.tanMgL()) * volumeL / 1000;
        String words = String.format(
                Locale.ROOT,
                "Add %.2f g of nitrogen: %.0f L from %.1f to %.1f mg/L.%s",
                nitrogenG,
                volumeL,
                known.tanMgL(),
                target,
                held);
        return new FishlessPlan(nitrogenG, target, free, words, due);
    }

    private static double free(Known known, double tanMgL) {
        boolean inRange =
                known.ph() >= 4 && known.ph() <= 11 && known.temperatureC() >= 0 && known.temperatureC() <= 40;
        return inRange ? UnionisedAmmonia.unionisedMgL(tanMgL, known.ph(), known.temperatureC()) : Double.NaN;
    }

    private static List<String> testsDue(Known known, Instant now) {
        List<String> due = new ArrayList<>();
        if (known.tanAt() == null || old(known.tanAt(), now)) {
            due.add("total-ammonia");
        }
        if (known.nitriteAt() == null || old(known.nitriteAt(), now)) {
            due.add("nitrite");
        }
        if (Double.isNaN(known.ph())) {
            due.add("ph");
        }
        return due;
    }

    private static boolean old(Instant at, Instant now) {
        return now.isAfter(at.plus(TEST_EVERY));
    }

    /** The dose as products, with their amounts; empty where nothing is to be added. */
    public List<String> products(double proteinPercent, double solutionPercent) {
        if (!(nitrogenG > 0)) {
            return List.of();
        }
        return List.of(
                line("ammonium chloride, pure", AmmoniaSource.AMMONIUM_CHLORIDE.productG(nitrogenG, 100)),
                line(
                        String.format(Locale.ROOT, "ammonia solution of %.1f %%", solutionPercent),
                        AmmoniaSource.AMMONIA_SOLUTION.productG(nitrogenG, solutionPercent)),
                line(
                        String.format(Locale.ROOT, "pellets of %.0f %% protein, over a week", proteinPercent),
                        AmmoniaSource.PELLETS.productG(nitrogenG, proteinPercent)));
    }

    private static String line(String what, double grams) {
        return String.format(Locale.ROOT, "%.1f g of %s", grams, what);
    }
}
