package bywash.rules.husbandry.stock;

import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.Weigh;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Keeps one cohort's book. Between weighings its mean mass is taken from the feed: gain = feed / conversion, with the cohort's
 * own last conversion a fifth either way, or 1.5 (1.1 to 2.2) while none is known. Those ranges are common practice, no source.
 */
final class CohortLedger {
    private static final double USUAL_CONVERSION = 1.5;
    private static final double BEST_CONVERSION = 1.1;
    private static final double WORST_CONVERSION = 2.2;
    private static final double OWN_RANGE = 1.2;

    /** A growth period without its temperatures: the day of a weighing is not over, so its mean is asked for later. */
    private record Measured(Baseline from, Weighing to, String vessel, FeedConversion conversion, double halfWidth) {
        GrowthPeriod with(WaterHistory water) {
            double days = days(from.at(), to.at());
            double degreeDays = water.degreeDays(vessel, from.at(), to.at());
            return new GrowthPeriod(
                    from.at(), to.at(), new Growth(from.meanG(), to.meanG(), days, degreeDays), conversion, halfWidth);
        }
    }

    private final String id;
    private final String species;
    private final Instant since;
    private final List<Weighing> weighings = new ArrayList<>();
    private final List<Measured> periods = new ArrayList<>();
    private final List<HarvestRecord> harvests = new ArrayList<>();
    private final Flows whole = new Flows();
    private Flows current = new Flows();
    private Baseline baseline;
    private String vessel;
    private int count;
    private int stocked;
    private int lost;
    private int movedOut;
    private int harvested;

    CohortLedger(FishIn in, String vessel) {
        this.id = in.cohort();
        this.species = in.species();
        this.since = in.at();
        this.vessel = vessel;
        this.baseline = new Baseline(in.at(), in.meanMassG(), Double.NaN, 0, "as stocked");
        add(in.at(), in.count(), in.meanMassG());
    }

    String vessel() {
        return vessel;
    }

    String species() {
        return species;
    }

    int count() {
        return count;
    }

    /** More fish come in; from here the mean is a mixture. */
    void add(Instant at, int more, double meanG) {
        double before = likelyG() * count;
        boolean first = count == 0 && stocked == 0;
        whole.add(current);
        current = new Flows();
        whole.inG += more * meanG;
        count += more;
        stocked += more;
        double biomass = before + more * meanG;
        baseline = new Baseline(
                at, biomass / Math.max(1, count), Double.NaN, biomass, first ? "as stocked" : "mixed as stocked");
    }

    void fed(double massG) {
        current.feedG += massG;
        current.feedPerFishG += count == 0 ? 0 : massG / count;
    }

    void lose(int fish) {
        int gone = Math.min(fish, count);
        current.deadG += gone * likelyG();
        count -= gone;
        lost += gone;
    }

    /** Fish leave alive; returns their mean mass. */
    double moveOut(int fish) {
        double meanG = likelyG();
        current.outG += fish * meanG;
        count -= fish;
        movedOut += fish;
        return meanG;
    }

    void moveTo(String newVessel) {
        vessel = newVessel;
    }

    /** Takes fish out; where they were larger or smaller than the rest, the mean of the rest moves. */
    void harvest(Harvest harvest) {
        double sum = harvest.massesG().stream().mapToDouble(Double::doubleValue).sum();
        double total = Double.isNaN(harvest.totalG()) ? sum : harvest.totalG();
        int taken = Math.min(harvest.count(), count);
        double mean = likelyG();
        double rest = mean * count - total;
        int left = count - taken;
        if (left > 0 && rest > 0 && mean > 0) {
            baseline = baseline.scaled(rest / left / mean);
        }
        current.outG += total;
        count = left;
        harvested += taken;
        harvests.add(new HarvestRecord(harvest.at(), taken, total, harvest.massesG()));
    }

    void weigh(Weigh weigh) {
        if (weigh.all()) {
            lost += Math.max(0, count - weigh.count());
            count = weigh.count();
        }
        Weighing weighing = new Weighing(
                weigh.at(), weigh.count(), Math.max(count, weigh.count()), weigh.totalG(), weigh.massesG());
        double meanG = weighing.meanG();
        double days = days(baseline.at(), weigh.at());
        double endG = meanG * count;
        if (days >= 1 && baseline.meanG() > 0) {
            periods.add(new Measured(
                    baseline,
                    weighing,
                    vessel,
                    current.conversion(baseline.biomassG(), endG),
                    halfWidth(weighing, days)));
        }
        whole.add(current);
        current = new Flows();
        weighings.add(weighing);
        String of = weigh.count() >= count ? "all" : weigh.count() + " of " + count;
        baseline = new Baseline(weigh.at(), meanG, weighing.halfWidthG(), endG, "weighed " + of);
    }

    private static double days(Instant from, Instant to) {
        return Duration.between(from, to).getSeconds() / 86_400.0;
    }

    /** Errors of two means, taken together, as a rate. */
    private double halfWidth(Weighing weighing, double days) {
        double before = baseline.halfWidthG() / baseline.meanG();
        double after = weighing.halfWidthG() / weighing.meanG();
        return 100 * StrictMath.sqrt(before * before + after * after) / days;
    }

    /** Mean mass of one fish as it is thought to be, g: asked for each feed, so without words. */
    double likelyG() {
        double own = lastConversion();
        return baseline.meanG() + current.feedPerFishG / (Double.isNaN(own) ? USUAL_CONVERSION : own);
    }

    MassEstimate mean() {
        double start = baseline.meanG();
        double known = Double.isNaN(baseline.halfWidthG()) ? 0 : baseline.halfWidthG();
        double own = lastConversion();
        boolean hasOwn = !Double.isNaN(own);
        double best = hasOwn ? own / OWN_RANGE : BEST_CONVERSION;
        double worst = hasOwn ? own * OWN_RANGE : WORST_CONVERSION;
        double fed = current.feedPerFishG;
        String since = baseline.words() + " at " + grams(start) + " g on "
                + baseline.at().toString().substring(0, 10);
        String evidence = fed > 0
                ? String.format(
                        Locale.ROOT,
                        "%s; %.0f g of feed a fish since, conversion %.2f",
                        since,
                        fed,
                        hasOwn ? own : USUAL_CONVERSION)
                : since + "; no feed on record since";
        return new MassEstimate(
                Math.max(0, start - known + fed / worst), likelyG(), start + known + fed / best, evidence);
    }

    private static String grams(double g) {
        return String.format(Locale.ROOT, g < 10 ? "%.1f" : "%.0f", g);
    }

    private double lastConversion() {
        for (int i = periods.size() - 1; i >= 0; i--) {
            double ratio = periods.get(i).conversion().economic();
            if (ratio > 0.5 && ratio < 5) {
                return ratio;
            }
        }
        return Double.NaN;
    }

    /** @param water the temperatures that it grew at */
    CohortStatus status(WaterHistory water) {
        MassEstimate mean = mean();
        Flows all = new Flows();
        all.add(whole);
        all.add(current);
        @Nullable
        Instant weighed =
                weighings.isEmpty() ? null : weighings.get(weighings.size() - 1).at();
        return new CohortStatus(
                id,
                species,
                vessel,
                since,
                count,
                stocked,
                lost,
                movedOut,
                harvested,
                mean,
                all.feedG,
                all.conversion(0, mean.likelyG() * count),
                weighings,
                periods.stream().map(p -> p.with(water)).toList(),
                harvests,
                weighed,
                null);
    }
}
