package bywash.rules.husbandry.feed;

import bywash.rules.husbandry.bacteria.ProvenLoad;
import bywash.rules.site.Need;
import bywash.rules.site.Species;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Looks ahead from what is fed now to what is planned, and warns before the oxygen, the bacteria or the alkalinity fall behind.
 *
 * <p>Oxygen: at steady aeration the deficit to saturation is in proportion to the use, K V (Cs - C) = use, the steady state of
 * two-film gas transfer (ASCE/EWRI 2-06, Measurement of oxygen transfer in clean water, its model); so C = Cs - (Cs - C0) F / F0.
 */
public final class FeedOutlook {
    /** Rise of the load on the bacteria that is taken to be safe at once. Common practice, no source. */
    private static final double SAFE_STEP = 1.2;
    /** Alkalinity under which the pH starts to swing, mg/L as CaCO3. Common practice, no source. */
    private static final double LEAST_ALKALINITY_MG_L = 40;

    private static final int AHEAD_D = 7;

    private FeedOutlook() {}

    /** Oxygen (mg/L) that a change of feed leaves at the same aeration; NaN where it cannot be told. */
    public static double oxygenAfterMgL(double oxygenMgL, double saturationMgL, double feedNowG, double feedThenG) {
        if (!(feedNowG > 0) || !(saturationMgL > oxygenMgL)) {
            return Double.NaN;
        }
        return saturationMgL - (saturationMgL - oxygenMgL) * feedThenG / feedNowG;
    }

    /**
     * Warnings for a plan.
     *
     * @param now load of the last week; null where nothing was fed
     * @param planned load to come
     * @param species in the water
     * @param proven what the bacteria were shown to carry; null where nothing was shown
     */
    public static List<FeedWarning> of(
            @Nullable FeedLoad now,
            FeedLoad planned,
            List<Species> species,
            WaterNow water,
            @Nullable ProvenLoad proven) {
        List<FeedWarning> warnings = new ArrayList<>();
        oxygen(warnings, now, planned, species, water);
        tests(warnings, species, water);
        bacteria(warnings, planned, water, proven);
        alkalinity(warnings, planned, water);
        return warnings;
    }

    private static void oxygen(
            List<FeedWarning> warnings,
            @Nullable FeedLoad now,
            FeedLoad planned,
            List<Species> species,
            WaterNow water) {
        double least =
                species.stream().mapToDouble(s -> s.least(Need.OXYGEN)).max().orElse(Double.NaN);
        if (now == null || Double.isNaN(least) || Double.isInfinite(least)) {
            return;
        }
        double after = oxygenAfterMgL(
                water.oxygenMgL(),
                water.saturationMgL(),
                now.feedGPerDay(),
                Math.max(now.feedGPerDay(), planned.feedGPerDay()));
        if (after < least) {
            warnings.add(new FeedWarning(
                    String.format(
                            Locale.ROOT,
                            "At %.0f g of feed a day oxygen would fall to %.1f mg/L; the fish need %.1f.",
                            Math.max(now.feedGPerDay(), planned.feedGPerDay()),
                            Math.max(0, after),
                            least),
                    String.format(
                            Locale.ROOT,
                            "At %.0f g a day the lowest of the last day was %.1f of %.1f mg/L at saturation; the use grows with the feed.",
                            now.feedGPerDay(),
                            water.oxygenMgL(),
                            water.saturationMgL()),
                    "Add aeration first, or feed less and in more meals."));
        }
    }

    private static void tests(List<FeedWarning> warnings, List<Species> species, WaterNow water) {
        double tan = species.stream()
                .mapToDouble(s -> s.most(Need.TOTAL_AMMONIA))
                .min()
                .orElse(1);
        double nitrite =
                species.stream().mapToDouble(s -> s.most(Need.NITRITE)).min().orElse(1);
        if (water.tanMgL() > tan) {
            warnings.add(behind("Ammonia", water.tanMgL(), tan));
        }
        if (water.nitriteMgL() > nitrite) {
            warnings.add(behind("Nitrite", water.nitriteMgL(), nitrite));
        }
    }

    private static FeedWarning behind(String what, double value, double most) {
        return new FeedWarning(
                String.format(Locale.ROOT, "%s is %.2f mg/L, above %.2f: the bacteria are behind.", what, value, most),
                "Latest manual test.",
                "Feed nothing today, then half; test again tomorrow.");
    }

    private static void bacteria(
            List<FeedWarning> warnings, FeedLoad planned, WaterNow water, @Nullable ProvenLoad proven) {
        if (proven == null) {
            return;
        }
        double carry = proven.at(water.temperatureC());
        if (planned.tanGPerDay() > SAFE_STEP * carry) {
            warnings.add(new FeedWarning(
                    String.format(
                            Locale.ROOT,
                            "The plan brings %.1f g of ammonia nitrogen a day; the bacteria have been shown to carry %.1f.",
                            planned.tanGPerDay(),
                            carry),
                    String.format(
                            Locale.ROOT,
                            "Low tests at %.1f g/d on %s%s.",
                            proven.tanGPerDay(),
                            proven.at().toString().substring(0, 10),
                            Double.isNaN(water.temperatureC() - proven.temperatureC())
                                    ? ""
                                    : String.format(
                                            Locale.ROOT,
                                            ", brought from %.1f to %.1f C",
                                            proven.temperatureC(),
                                            water.temperatureC())),
                    "Raise the feed by a fifth a week at most, and test ammonia and nitrite each time."));
        }
    }

    private static void alkalinity(List<FeedWarning> warnings, FeedLoad planned, WaterNow water) {
        double lossPerDay = planned.alkalinityGPerDay() * 1000 / water.volumeL();
        double days = (water.alkalinityMgL() - LEAST_ALKALINITY_MG_L) / lossPerDay;
        if (days < AHEAD_D) {
            warnings.add(new FeedWarning(
                    days <= 0
                            ? String.format(
                                    Locale.ROOT,
                                    "Alkalinity is %.0f mg/L, under %.0f: the pH can fall fast.",
                                    water.alkalinityMgL(),
                                    LEAST_ALKALINITY_MG_L)
                            : String.format(
                                    Locale.ROOT,
                                    "Alkalinity falls under %.0f mg/L in %.0f d.",
                                    LEAST_ALKALINITY_MG_L,
                                    Math.ceil(days)),
                    String.format(
                            Locale.ROOT,
                            "Nitrifying the planned feed uses %.1f g a day as CaCO3, %.1f mg/L a day.",
                            planned.alkalinityGPerDay(),
                            lossPerDay),
                    "Add a carbonate in small steps; see the pH plan."));
        }
    }
}
