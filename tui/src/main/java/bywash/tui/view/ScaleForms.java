package bywash.tui.view;

import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.MassStatistics;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Checks of the forms with fish on the scales, weighed one by one or together, and what they add up to as they are typed. */
public final class ScaleForms {
    /** As what was weighed: a sample of the cohort. */
    public static final String SAMPLE = "a sample";
    /** As what was weighed: every fish of it. */
    public static final String ALL = "all of them";

    private static final double FAR = 3;

    private ScaleForms() {}

    /** Fields: cohort, sample or all, weights one by one, or count and total, when. */
    public static FormCheck weigh(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        CohortStatus cohort = in.cohort(0).orElse(null);
        if (cohort == null) {
            return in.open();
        }
        boolean all = in.choice(1).equals(ALL);
        Scale scale = scale(in, 2, cohort);
        Instant at = in.when(5);
        if (in.good() && all && scale.count() != cohort.count()) {
            in.warn(cohort.count() + " are on record; " + scale.count() + " weighed as all of them puts the count to "
                    + scale.count() + ".");
        }
        return in.done(
                "Weighing of " + scale.count() + " entered.",
                new Weigh(at, cohort.id(), all, scale.count(), scale.totalG(), scale.massesG()));
    }

    /** Fields: cohort, weights one by one, count, total, when. */
    public static FormCheck harvest(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        CohortStatus cohort = in.cohort(0).orElse(null);
        if (cohort == null) {
            return in.open();
        }
        Scale scale = scale(in, 1, cohort);
        Instant at = in.when(4);
        boolean each = scale.count() == scale.massesG().size();
        return in.done(
                scale.count() + " harvested, " + in.units().bulk(scale.totalG()) + ".",
                new Harvest(at, cohort.id(), scale.count(), scale.massesG(), each ? Double.NaN : scale.totalG()));
    }

    /** What was on the scales. */
    private record Scale(int count, double totalG, List<Double> massesG) {}

    /** From a field: weights, count, total. Weights alone are enough; without them count and total are asked for. */
    private static Scale scale(FormReader in, int field, CohortStatus cohort) {
        List<Double> masses = in.masses(field, "Weights");
        double sum = masses.stream().mapToDouble(Double::doubleValue).sum();
        boolean more = !in.blank(field + 1);
        if (masses.isEmpty() && !more) {
            in.problem("Type the weights one by one, or the count and the total.");
            return new Scale(0, 0, masses);
        }
        int count = more ? in.count(field + 1, "Count") : masses.size();
        boolean together = count > masses.size();
        double total = together ? in.mass(field + 2, "Total") : sum;
        if (count < masses.size()) {
            in.problem("Count: " + masses.size() + " weights are typed; type at least that, or leave it open.");
        } else if (together && total < sum) {
            in.problem("Total: the weights typed come to " + in.units().mass(sum) + "; type the total of all " + count
                    + " fish.");
        }
        far(in, cohort, masses, total / Math.max(1, count));
        return new Scale(count, total, masses);
    }

    private static void far(FormReader in, CohortStatus cohort, List<Double> masses, double meanG) {
        double usual = cohort.mean().likelyG();
        List<Double> odd = new ArrayList<>(masses);
        odd.add(meanG);
        odd.stream()
                .filter(g -> usual > 0 && g > 0 && (g > FAR * usual || g < usual / FAR))
                .findFirst()
                .ifPresent(g -> in.warn(in.units().mass(g) + " is far from the "
                        + in.units().mass(usual) + " on record for one fish; is it typed right?"));
    }

    /** What the weights typed in a field add up to; how to type them where there are none yet. */
    public static String sums(Frame frame, Filled filled, int field) {
        StockUnits units = StockUnits.of(frame);
        List<Double> masses = filled.numbers(field).stream()
                .map(units::grams)
                .filter(g -> g > 0)
                .toList();
        if (masses.isEmpty()) {
            return "Weights one by one in " + units.massUnit() + ", such as 412, 398, 405.";
        }
        MassStatistics s = MassStatistics.of(masses);
        String spread = s.count() < 2 ? "" : ", spread " + units.mass(s.spreadG());
        return s.count() + " weighed, total " + units.mass(s.totalG()) + ", mean " + units.mass(s.meanG()) + spread
                + ", smallest " + units.mass(s.smallestG()) + ", largest " + units.mass(s.largestG());
    }
}
