package bywash.rules.husbandry.ph;

import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.site.Mains;
import bywash.rules.text.Names;
import bywash.rules.water.CarbonateWater;
import bywash.rules.water.PhDosePlan;
import bywash.rules.water.PhReagent;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A pH plan in dated steps, one a day, each followed by a test before the next; up or down, with a reagent or by waiting for the
 * bacteria.
 *
 * <p>A day's step with fish is at most 0.2: changes of 0.3 within 12 to 24 h are hard on fish, FAO Technical Paper 589 (2014), section
 * 7.3, read in a public copy. Doses by {@link PhDosePlan}, closed to air, where a dose acts strongest at once.
 *
 * @param means the reagent's label, or nitrification
 * @param steps in order; empty where the water is there already
 * @param productG in all, g; 0 where the bacteria do it
 * @param after what the plan leaves behind, in words
 * @param mains what a tenth of mains water would do, in words
 * @param cautions to show beside it
 */
public record PhPlan(String means, List<Step> steps, double productG, String after, String mains, String cautions) {
    /** Under this alkalinity the pH can fall fast, mg/L as CaCO3. Common practice, no source. */
    public static final double LEAST_ALKALINITY_MG_L = 40;

    private static final Duration TEST_AFTER = Duration.ofHours(2);
    private static final double TENTH = 0.1;
    private static final double DRIFT = 0.05;
    private static final String ACID =
            "Gloves and eye protection. Add acid to water, never water to acid, into moving water away from fish. Never mix chemicals.";
    private static final String BASE =
            "Gloves and eye protection. Dissolve in a bucket of water first, into moving water away from fish. Never mix chemicals.";
    private static final String BOTH =
            " Doses are arithmetic on the label strength: follow the label. Stop where a test is not as expected.";
    private static final String WAIT =
            "Test pH and alkalinity every few days: once the alkalinity is low the pH falls faster than before. With fish, hold it"
                    + " with a base before it is under 6.";

    public PhPlan {
        steps = List.copyOf(steps);
    }

    /**
     * One step.
     *
     * @param doseAt when to add it; where the bacteria do it, the earliest day that the pH may be there
     * @param testAt when to test, and the next step waits for it; where the bacteria do it, the latest day
     * @param productG at label strength, g; 0 where the bacteria do it
     * @param alkalinityMgL expected after, mg/L as CaCO3
     */
    public record Step(
            Instant doseAt, Instant testAt, double fromPh, double toPh, double productG, double alkalinityMgL) {
        public String words() {
            return productG > 0
                    ? String.format(
                            Locale.ROOT,
                            "%.1f g, pH %.2f to %.2f, alkalinity %.0f mg/L after; test 2 h later",
                            productG,
                            fromPh,
                            toPh,
                            alkalinityMgL)
                    : String.format(
                            Locale.ROOT,
                            "test from this day on: pH %.2f to %.2f at the latest by %s, alkalinity then %.0f mg/L",
                            fromPh,
                            toPh,
                            testAt.toString().substring(0, 10),
                            alkalinityMgL);
        }
    }

    /**
     * Plans it with a reagent.
     *
     * @throws IllegalArgumentException where the reagent cannot take the water there; says why
     */
    public static PhPlan of(Loop loop, double targetPh, Product product, Instant firstDose) {
        PhDosePlan plan = PhDosePlan.of(
                loop.water(),
                targetPh,
                new PhDosePlan.Method(
                        product.reagent(), loop.volumeL(), product.strengthPercent(), loop.largestStep(), TEST_AFTER));
        List<Step> steps = new ArrayList<>();
        for (PhDosePlan.Step step : plan.steps()) {
            Instant at = firstDose.plus(Duration.ofDays(steps.size()));
            steps.add(new Step(
                    at, at.plus(TEST_AFTER), step.fromPh(), step.toPh(), step.productG(), step.alkalinityLeftMgL()));
        }
        return new PhPlan(
                Names.words(product.reagent().word()),
                steps,
                plan.totalG(),
                after(loop, steps, product.reagent()),
                mains(loop.water(), loop.mains()),
                cautions(product.reagent()));
    }

    /** What air makes of it, and how much alkalinity is left. */
    private static String after(Loop loop, List<Step> steps, PhReagent reagent) {
        if (steps.isEmpty()) {
            return "";
        }
        Step last = steps.get(steps.size() - 1);
        List<String> words = new ArrayList<>();
        double aired = last.alkalinityMgL() > 0
                ? CarbonateWater.ofCo2(
                                loop.water().temperatureC(),
                                last.alkalinityMgL(),
                                loop.water().co2MgL())
                        .ph()
                : last.toPh();
        if (StrictMath.abs(aired - last.toPh()) > DRIFT) {
            words.add(String.format(
                    Locale.ROOT,
                    "As air brings the carbon dioxide back to where it is now, the pH drifts to about %.2f; the tests show it.",
                    aired));
        }
        if (last.alkalinityMgL() < LEAST_ALKALINITY_MG_L) {
            words.add(String.format(
                    Locale.ROOT,
                    "It leaves alkalinity of %.0f mg/L, under %.0f: the pH can fall fast from there.",
                    last.alkalinityMgL(),
                    LEAST_ALKALINITY_MG_L));
        }
        words.add(note(reagent));
        return String.join(" ", words).strip();
    }

    /** What else the chemical brings. Common knowledge of the trade, no source. */
    private static String note(PhReagent reagent) {
        return switch (reagent) {
            case POTASSIUM_BICARBONATE, POTASSIUM_CARBONATE, POTASSIUM_HYDROXIDE -> "Its potassium feeds the plants.";
            case CALCIUM_HYDROXIDE ->
                "Its calcium feeds the plants. It is caustic, and milky water is too much at once.";
            case CALCIUM_CARBONATE ->
                "It dissolves over days and hardly above pH 7.4: hang it in the flow in a mesh bag, take it out when the pH is there.";
            case SODIUM_HYDROXIDE, SODIUM_BICARBONATE ->
                "Its sodium stays in the water and builds up; plants do not want it.";
            case PHOSPHORIC_ACID -> "It brings phosphorus.";
            case NITRIC_ACID -> "It brings nitrate.";
            case HYDROCHLORIC_ACID -> "It brings chloride.";
            case SULFURIC_ACID -> "It brings sulfate, and heats strongly when it meets water.";
            case CITRIC_ACID -> "Bacteria eat it within days and the pH comes back; it uses oxygen.";
        };
    }

    /**
     * Plans it by waiting for the bacteria, in steps of what a day may bring with a reagent.
     *
     * @throws IllegalArgumentException where the target is no lower pH, or the rate is not known
     */
    public static PhPlan byNitrification(Loop loop, double targetPh, Instant now) {
        NitrifyingFall whole = NitrifyingFall.of(loop.water(), targetPh, loop.alkalinityPerDay());
        if (!whole.timed()) {
            throw new IllegalArgumentException(
                    "no feed is on record in the last week, so how fast the bacteria lower the pH is"
                            + " not known; enter the feed given");
        }
        double from = loop.water().ph();
        int count = (int) StrictMath.ceil((from - targetPh) / loop.largestStep() - 1e-9);
        List<Step> steps = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            double to = i == count ? targetPh : from + (targetPh - from) * i / count;
            double before = from + (targetPh - from) * (i - 1) / count;
            NitrifyingFall fall = NitrifyingFall.of(loop.water(), to, loop.alkalinityPerDay());
            steps.add(
                    new Step(later(now, fall.leastDays()), later(now, fall.mostDays()), before, to, 0, fall.openMgL()));
        }
        String after = String.format(
                Locale.ROOT,
                "%.0f to %.0f days at the feed of the last week: sooner where the carbon dioxide stays in the water, later where air"
                        + " drives it off. A tenth of mains water brings %.1f days of alkalinity back.%s",
                StrictMath.floor(whole.leastDays()),
                StrictMath.ceil(whole.mostDays()),
                TENTH * (loop.mains().alkalinityMgL() - loop.water().alkalinityMgL()) / -loop.alkalinityPerDay(),
                whole.openMgL() < LEAST_ALKALINITY_MG_L
                        ? String.format(
                                Locale.ROOT,
                                " Alkalinity may be down to %.0f mg/L by then: the pH can fall fast from there.",
                                whole.openMgL())
                        : "");
        return new PhPlan(PhAim.NITRIFICATION, steps, 0, after, mains(loop.water(), loop.mains()), WAIT);
    }

    private static Instant later(Instant now, double days) {
        return now.plusSeconds(StrictMath.round(days * 86_400));
    }

    /** What to heed with an acid or a base. */
    public static String cautions(PhReagent reagent) {
        return (reagent.isAcid() ? ACID : BASE) + BOTH;
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
                        + " %.0f mg/L before any air gets at it, and cool the water by %.1f C. Its disinfectant must be gone first.",
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
