package bywash.rules.water;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * A pH change split into small steps, each with a wait and a re-test before the next.
 *
 * <p>The pH is moved in equal steps no larger than asked. The steps are worked out closed to air, the case in which a dose acts
 * strongest at once; where the vessel is aerated the pH then drifts back, which the re-test shows. The sizes of step and wait are
 * the caller's judgement, not published figures.
 *
 * @param steps the steps in order
 * @param retestAfter how long to wait before each re-test
 */
public record PhDosePlan(List<Step> steps, Duration retestAfter) {
    private static final int MOST_STEPS = 100;

    /**
     * One step.
     *
     * @param fromPh pH before
     * @param toPh pH expected after
     * @param productG product to add at label strength (g)
     * @param alkalinityLeftMgL alkalinity expected after (mg/L as CaCO3)
     */
    public record Step(double fromPh, double toPh, double productG, double alkalinityLeftMgL) {}

    /**
     * How to dose.
     *
     * @param reagent the acid or base
     * @param volumeL volume of water (L, above 0, at most 1 000 000)
     * @param strengthPercent pure chemical in the product by weight, from the label (%, above 0, at most 100)
     * @param largestStepPh largest change of pH in one step (0.05 to 0.5)
     * @param retestAfter wait before each re-test
     */
    public record Method(
            PhReagent reagent, double volumeL, double strengthPercent, double largestStepPh, Duration retestAfter) {
        /** Refuses values outside the range. */
        public Method {
            Valid.positive("volumeL", volumeL, 1_000_000, "L");
            Valid.positive("strengthPercent", strengthPercent, 100, "%");
            Valid.within("largestStepPh", largestStepPh, 0.05, 0.5, "");
            if (retestAfter.compareTo(Duration.ofMinutes(10)) < 0) {
                throw new IllegalArgumentException(
                        "retestAfter is " + retestAfter + "; it must be at least " + Duration.ofMinutes(10));
            }
        }
    }

    /** Keeps its own copy of the steps. */
    public PhDosePlan {
        steps = List.copyOf(steps);
    }

    /**
     * Splits the change, closed to air.
     *
     * @throws IllegalArgumentException if the reagent cannot take the water to that pH
     */
    public static PhDosePlan of(CarbonateWater before, double targetPh, Method method) {
        PhDose.closed(before, method.reagent(), targetPh);
        double change = targetPh - before.ph();
        int count = (int) Math.ceil(Math.abs(change) / method.largestStepPh() - 1e-9);
        Valid.within("number of steps", count, 0, MOST_STEPS, "");
        List<Step> steps = new ArrayList<>();
        CarbonateWater water = before;
        for (int i = 1; i <= count; i++) {
            double next = i == count ? targetPh : before.ph() + change * i / count;
            PhDose dose = PhDose.closed(water, method.reagent(), next);
            double grams = dose.grams(method.reagent(), method.volumeL()) / (method.strengthPercent() / 100);
            steps.add(new Step(water.ph(), next, grams, dose.after().alkalinityMgL()));
            water = dose.after();
        }
        return new PhDosePlan(steps, method.retestAfter());
    }

    /** Product in all steps together (g). */
    public double totalG() {
        return steps.stream().mapToDouble(Step::productG).sum();
    }
}
