package bywash.tui.view;

import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.husbandry.ph.Loop;
import bywash.rules.husbandry.ph.PhPlan;
import bywash.rules.husbandry.season.PhOutlook;
import bywash.rules.husbandry.season.PhStatus;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.site.VesselRole;
import bywash.rules.water.CarbonateWater;
import bywash.rules.water.LabelStrength;
import bywash.rules.water.PhReagent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Check of the form that plans a way to another pH, and the plan as it is typed. */
public final class PhForms {
    /** In the order offered: what a grower would use first, then waiting. */
    private static final List<PhReagent> REAGENTS = List.of(
            PhReagent.POTASSIUM_BICARBONATE,
            PhReagent.POTASSIUM_CARBONATE,
            PhReagent.CALCIUM_HYDROXIDE,
            PhReagent.CALCIUM_CARBONATE,
            PhReagent.PHOSPHORIC_ACID,
            PhReagent.NITRIC_ACID,
            PhReagent.HYDROCHLORIC_ACID,
            PhReagent.SULFURIC_ACID);

    private static final double USUAL_C = 20;

    private PhForms() {}

    public static List<String> means() {
        List<String> words =
                new ArrayList<>(REAGENTS.stream().map(PhReagent::word).toList());
        words.add(PhAim.NITRIFICATION);
        return words;
    }

    /** Fields: target, means, strength. */
    public static FormCheck plan(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        in.number(0, "Target pH", 5.5, 8.5);
        if (!in.choice(1).equals(PhAim.NITRIFICATION)) {
            in.strength(2, in.choice(1));
        }
        if (!in.good()) {
            return in.open();
        }
        PhAim aim = aim(frame, filled);
        String missing = missing(frame);
        if (!missing.isEmpty()) {
            in.problem(missing);
            return in.open();
        }
        try {
            PhPlan plan = plan(frame, aim);
            if (plan.steps().isEmpty()) {
                in.problem("Target pH: the water is there already.");
            }
            in.warn(plan.cautions());
        } catch (IllegalArgumentException e) {
            in.problem("No plan: " + e.getMessage() + ".");
        }
        return in.done("The pH plan is on record; page f follows it from the water as it is.", aim);
    }

    private static PhAim aim(Frame frame, Filled filled) {
        boolean wait = filled.text(1).equals(PhAim.NITRIFICATION);
        double strength = wait ? 100 : LabelStrength.percent(filled.text(1), filled.number(2));
        return new PhAim(frame.now(), filled.number(0), filled.text(1), strength);
    }

    private static String missing(Frame frame) {
        PhStatus ph = status(frame);
        if (ph == null || Double.isNaN(ph.ph())) {
            return "No pH reading today or yesterday; a plan needs one.";
        }
        return Double.isNaN(ph.alkalinityMgL()) ? "No alkalinity test in two weeks; test it, page m." : "";
    }

    private static @org.jspecify.annotations.Nullable PhStatus status(Frame frame) {
        SeasonStatus season = frame.snapshot().season();
        return season == null ? null : season.ph();
    }

    private static PhPlan plan(Frame frame, PhAim aim) {
        PhStatus ph = status(frame);
        if (ph == null) {
            throw new IllegalArgumentException("nothing is on record yet");
        }
        Site site = frame.snapshot().site();
        CarbonateWater water = CarbonateWater.ofAlkalinity(temperature(frame), ph.ph(), ph.alkalinityMgL());
        Loop loop = new Loop(
                water,
                frame.snapshot().systemVolume().likelyL(),
                frame.snapshot().stocking() == Stocking.FISH,
                ph.alkalinityPerDay(),
                site.mains());
        return PhOutlook.plan(loop, aim, frame.now(), site);
    }

    private static double temperature(Frame frame) {
        return frame.snapshot().probes().stream()
                .filter(p -> p.probe().quantity() == Quantity.TEMPERATURE && Double.isFinite(p.value()))
                .filter(p -> frame.snapshot()
                        .site()
                        .vessel(p.probe().vessel())
                        .map(v -> v.role() != VesselRole.RESERVE)
                        .orElse(false))
                .findFirst()
                .map(p -> Math.max(0, Math.min(40, p.value())))
                .orElse(USUAL_C);
    }

    /** What is taken where the label was not read, for a hint. */
    public static String strengthHint(String reagent) {
        return reagent.equals(PhAim.NITRIFICATION) ? "none, the bacteria do it" : DoseForms.strengthHint(reagent);
    }

    /** The water as it is, for a hint. */
    public static String now(Frame frame) {
        PhStatus ph = status(frame);
        return ph == null || Double.isNaN(ph.ph()) || Double.isNaN(ph.alkalinityMgL())
                ? ""
                : String.format(Locale.ROOT, "now %.2f at alkalinity %.0f mg/L", ph.ph(), ph.alkalinityMgL());
    }

    /** The plan as typed so far, a line a step; empty while there is none. */
    public static List<String> lines(Frame frame, Filled filled) {
        FormCheck check = plan(frame, filled);
        if (!check.ready()) {
            return List.of();
        }
        PhPlan plan = plan(frame, aim(frame, filled));
        List<String> lines = new ArrayList<>();
        for (PhPlan.Step step : plan.steps()) {
            lines.add(StockView.day(step.doseAt(), frame) + "  " + step.words());
        }
        if (plan.productG() > 0) {
            lines.add(String.format(Locale.ROOT, "%.0f g in all.", plan.productG()));
        }
        lines.add(plan.after());
        lines.add(plan.mains());
        return lines.stream()
                .filter(l -> !l.isEmpty())
                .map(l -> UsWords.of(l, frame.snapshot().site().units()))
                .toList();
    }
}
