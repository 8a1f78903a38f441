package bywash.rules.husbandry.feed;

import bywash.rules.event.Appetite;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.water.FeedRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Feed for a day: by the fish, and against what the plants can use.
 *
 * @param cohorts those with fish, in order
 * @param lowG all together, g/d
 * @param highG all together, g/d
 * @param plants what the planted area can use; null where nothing is planted
 * @param appetiteShare 0 to 1
 */
public record FeedPlan(
        List<CohortRation> cohorts, double lowG, double highG, FeedRate.@Nullable Range plants, double appetiteShare) {
    public FeedPlan {
        cohorts = List.copyOf(cohorts);
    }

    /** @param temperatureC of the water (Cel); NaN where not known */
    public static FeedPlan of(
            Site site,
            List<CohortStatus> stock,
            double temperatureC,
            @Nullable Appetite appetite,
            FeedRate.@Nullable Range plants) {
        List<CohortRation> rations = new ArrayList<>();
        double share = appetite == null ? 1 : appetite.share();
        double low = 0;
        double high = 0;
        for (CohortStatus cohort : stock) {
            if (cohort.count() > 0 && cohort.mean().likelyG() > 0) {
                CohortRation ration = ration(site, cohort, temperatureC, share);
                rations.add(ration);
                low += ration.lowG();
                high += ration.highG();
            }
        }
        return new FeedPlan(rations, low, high, plants, share);
    }

    private static CohortRation ration(Site site, CohortStatus cohort, double temperatureC, double appetite) {
        Ration ration = Ration.ofMass(cohort.mean().likelyG());
        Species species = SpeciesTable.find(site, cohort.species()).orElse(null);
        double warm =
                species == null || Double.isNaN(temperatureC) ? 1 : Ration.temperatureShare(species, temperatureC);
        double kg = cohort.biomass().likelyG() / 1000;
        double low = FeedRate.byBodyWeightGPerDay(kg, ration.lowPercent()) * warm * appetite;
        double high = FeedRate.byBodyWeightGPerDay(kg, ration.highPercent()) * warm * appetite;
        String temperature = Double.isNaN(temperatureC)
                ? "temperature not known"
                : String.format(Locale.ROOT, "%.0f %% of it at %.1f C", 100 * warm, temperatureC);
        String words = String.format(
                Locale.ROOT,
                "%d fish of %.0f g, %.0f to %.0f %% of %.1f kg, %s",
                cohort.count(),
                cohort.mean().likelyG(),
                ration.lowPercent(),
                ration.highPercent(),
                kg,
                temperature);
        return new CohortRation(cohort.id(), cohort.biomass().likelyG(), ration, warm, low, high, words);
    }

    /** Middle of the plan, g/d. */
    public double middleG() {
        return (lowG + highG) / 2;
    }

    /** What the fish would eat against what the plants can use. */
    public String words() {
        if (cohorts.isEmpty()) {
            return "No fish on record.";
        }
        String fish = String.format(Locale.ROOT, "%.0f to %.0f g of feed a day for the fish", lowG, highG);
        if (appetiteShare < 1) {
            fish += String.format(Locale.ROOT, " (%.0f %% of the ration: they last ate poorly)", 100 * appetiteShare);
        }
        if (plants == null) {
            return fish + "; nothing is planted on record.";
        }
        String use = String.format(
                Locale.ROOT,
                "by their area the beds can use %.0f to %.0f g",
                plants.lowGPerDay(),
                plants.highGPerDay());
        if (lowG > plants.highGPerDay()) {
            return fish + "; " + use + ": more than the plants can use, nitrate may rise.";
        }
        if (highG < plants.lowGPerDay()) {
            return fish + "; " + use + ": less than the plants can use, they may run short.";
        }
        return fish + "; " + use + ": they match.";
    }
}
