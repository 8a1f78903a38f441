package bywash.rules.husbandry.ph;

import bywash.rules.site.Mains;
import bywash.rules.water.CarbonateWater;
import bywash.rules.water.PhDosePlan;
import bywash.rules.water.PhReagent;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A pH plan in dated steps, one a day, each followed by a test before the next.
 *
 * <p>A day's step is at most 0.2: changes of 0.3 within 12 to 24 h are hard on fish, FAO Technical Paper 589 (2014), section 7.3, read in a
 * public copy. Doses by {@link PhDosePlan}.
 *
 * @param steps in order; empty where the water is there already
 * @param mains what a tenth of mains water would do, in words
 * @param cautions to show beside it
 */
public record PhPlan(List<Step> steps, double productG, String mains, String cautions) {
    /** Largest step in a day. */
    public static final double LARGEST_STEP = 0.2;

    private static final Duration TEST_AFTER = Duration.ofHours(2);
    private static final double TENTH = 0.1;
    private static final String ACID =
            "Gloves and eye protection. Add acid to water, never water to acid, into moving water away from fish. Never mix chemicals.";
    private static final String BASE =
            "Gloves and eye protection. Dissolve in a bucket of water first, into moving water away from fish. Never mix chemicals.";
    private static final String BOTH =
            " Doses are arithmetic on the label strength: follow the label. Stop where a test is not as expected.";

    public PhPlan {
        steps = List.copyOf(steps);
    }

    /**
     * One step.
     *
     * @param doseAt when to add it
     * @param testAt when to test; the next step waits for it
     * @param productG at label strength, g
     * @param alkalinityMgL expected after, mg/L as CaCO3
     */
    public record Step(
            Instant doseAt, Instant testAt, double fromPh, double toPh, double productG, double alkalinityMgL) {
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "%.1f g, pH %.2f to %.2f, alkalinity %.0f mg/L after; test 2 h later",
                    productG,
                    fromPh,
                    toPh,
                    alkalinityMgL);
        }
    }

    /**
     * Plans it.
     *
     * @param strengthPercent of the product, from the label
     * @throws IllegalArgumentException where the reagent cannot take the water there; says why
     */
    public static PhPlan of(
            CarbonateWater water, double targetPh, Product product, double volumeL, Instant firstDose, Mains mains) {
        PhDosePlan plan = PhDosePlan.of(
                water,
                targetPh,
                new PhDosePlan.Method(product.reagent(), volumeL, product.strengthPercent(), LARGEST_STEP, TEST_AFTER));
        List<Step> steps = new ArrayList<>();
        for (PhDosePlan.Step step : plan.steps()) {
            Instant at = firstDose.plus(Duration.ofDays(steps.size()));
            steps.add(new Step(
                    at, at.plus(TEST_AFTER), step.fromPh(), step.toPh(), step.productG(), step.alkalinityLeftMgL()));
        }
        String cautions = (product.reagent().isAcid() ? ACID : BASE) + BOTH;
        return new PhPlan(steps, plan.totalG(), mains(water, mains), cautions);
    }

    /** An acid or base as bought. */
    public record Product(PhReagent reagent, double strengthPercent) {}

    /** What a tenth of mains water would do to this water, in words with the figures. */
    public static String mains(CarbonateWater water, Mains mains) {
        CarbonateWater tap = CarbonateWater.ofAlkalinity(mains.temperatureC(), mains.ph(), mains.alkalinityMgL());
        CarbonateWater mixed = MixedWater.of(water, tap, TENTH);
        return String.format(
                Locale.ROOT,
                "A tenth of mains water (pH %.1f, alkalinity %.0f mg/L) would move the pH from %.2f to %.2f and the alkalinity from %.0f to"
                        + " %.0f mg/L before any air gets at it, and cool the water by %.1f Cel. Its disinfectant must be gone first.",
                mains.ph(),
                mains.alkalinityMgL(),
                water.ph(),
                mixed.ph(),
                water.alkalinityMgL(),
                mixed.alkalinityMgL(),
                water.temperatureC() - mixed.temperatureC());
    }

    /** The usual dosing hour: eight in the morning of the next day, so that there is light to watch by. */
    public static Instant nextMorning(Instant now, java.time.ZoneId zone) {
        return now.atZone(zone)
                .toLocalDate()
                .plusDays(1)
                .atTime(8, 0)
                .atZone(zone)
                .toInstant();
    }
}
