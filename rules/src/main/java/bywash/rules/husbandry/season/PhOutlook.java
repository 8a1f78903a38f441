package bywash.rules.husbandry.season;

import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.husbandry.feed.WaterNow;
import bywash.rules.husbandry.ph.Loop;
import bywash.rules.husbandry.ph.PhPlan;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.text.Names;
import bywash.rules.text.Sentence;
import bywash.rules.water.CarbonateWater;
import bywash.rules.water.Nitrification;
import bywash.rules.water.PhReagent;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Works out the pH's status. Where the grower chose an aim, the plan goes there from the water as it is now, anew each time. Else the
 * aim is 6.8 where fish, plants and bacteria share the water, inside 6 to 7 of FAO Technical Paper 589 (2014), table 3.2, read in a
 * public copy; a plan is made under 6.4 with potassium bicarbonate, which feeds the plants as well.
 */
public final class PhOutlook {
    private static final double AIM = 6.8;
    private static final double PLAN_UNDER = 6.4;
    private static final double WATCH_OVER = 7.4;
    private static final double THERE = 0.05;
    private static final PhPlan.Product BASE = new PhPlan.Product(PhReagent.POTASSIUM_BICARBONATE, 100);

    private final Site site;
    private final Instant now;

    private PhOutlook(Site site, Instant now) {
        this.site = site;
        this.now = now;
    }

    /**
     * How it stands.
     *
     * @param nitrogenGPerDay ammonia nitrogen of feed and doses, g/d; NaN where neither is on record
     * @param aim what the grower chose; null where nothing
     */
    static PhStatus of(
            Site site, WaterNow water, double nitrogenGPerDay, @Nullable PhAim aim, Surroundings around, Instant now) {
        double perDay = Double.isNaN(nitrogenGPerDay)
                ? Double.NaN
                : -Nitrification.alkalinityGPerDay(nitrogenGPerDay) * 1000 / water.volumeL();
        PhStatus bare = new PhStatus(water.ph(), water.alkalinityMgL(), perDay, aim, null, "");
        String missing = Double.isNaN(water.ph())
                ? "No pH reading today or yesterday."
                : Double.isNaN(water.alkalinityMgL()) ? "No alkalinity test in two weeks: test." : "";
        if (!missing.isEmpty()) {
            return bare.with(null, missing);
        }
        String words =
                Sentence.of("pH %.2f at alkalinity %.0f mg/L%s.", water.ph(), water.alkalinityMgL(), falls(perDay));
        try {
            double temperature = Double.isNaN(water.temperatureC()) ? 20 : water.temperatureC();
            CarbonateWater present = CarbonateWater.ofAlkalinity(temperature, water.ph(), water.alkalinityMgL());
            boolean fish = around.stocking() == Stocking.FISH;
            Loop loop = new Loop(present, water.volumeL(), fish, perDay, site.mains());
            PhOutlook outlook = new PhOutlook(site, now);
            return aim == null ? outlook.usual(bare, loop, words) : outlook.chosen(bare, loop, aim, words);
        } catch (IllegalArgumentException e) {
            return bare.with(null, words + " No plan: " + e.getMessage() + ".");
        }
    }

    private PhStatus usual(PhStatus bare, Loop loop, String words) {
        if (bare.ph() < PLAN_UNDER) {
            return bare.with(PhPlan.of(loop, AIM, BASE, PhPlan.nextMorning(now, site.timeZone())), words);
        }
        String high = bare.ph() > WATCH_OVER
                ? " It is high for the plants; nitrifying will bring it down, so wait before any acid."
                : "";
        return bare.with(null, words + high + " " + PhPlan.mains(loop.water(), site.mains()));
    }

    private PhStatus chosen(PhStatus bare, Loop loop, PhAim aim, String words) {
        String set = Sentence.of(
                " The aim is %.1f by %s, set on %s",
                aim.targetPh(),
                Names.words(aim.reagent()),
                aim.at().atZone(site.timeZone()).toLocalDate());
        if (StrictMath.abs(bare.ph() - aim.targetPh()) <= THERE) {
            return bare.with(null, words + set + ": it is reached.");
        }
        return bare.with(plan(loop, aim, now, site), words + set + ".");
    }

    /**
     * The plan of an aim from the water as it is.
     *
     * @throws IllegalArgumentException where it cannot get there; says why
     */
    public static PhPlan plan(Loop loop, PhAim aim, Instant now, Site site) {
        if (aim.reagent().equals(PhAim.NITRIFICATION)) {
            return PhPlan.byNitrification(loop, aim.targetPh(), now);
        }
        PhReagent reagent = PhReagent.of(aim.reagent())
                .orElseThrow(() -> new IllegalArgumentException("reagent " + aim.reagent() + " is not known"));
        return PhPlan.of(
                loop,
                aim.targetPh(),
                new PhPlan.Product(reagent, aim.strengthPercent()),
                PhPlan.nextMorning(now, site.timeZone()));
    }

    private static String falls(double perDay) {
        return Double.isNaN(perDay) ? "" : Sentence.of("; nitrifying takes %.1f mg/L of it a day", -perDay);
    }
}
