package bywash.rules.husbandry.season;

import bywash.rules.husbandry.feed.FeedLoad;
import bywash.rules.husbandry.feed.WaterNow;
import bywash.rules.husbandry.ph.PhPlan;
import bywash.rules.site.Site;
import bywash.rules.text.Sentence;
import bywash.rules.water.CarbonateWater;
import bywash.rules.water.PhReagent;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Works out the pH's status. The aim is 6.8 where fish, plants and bacteria share the water, inside 6 to 7 of FAO Technical Paper 589
 * (2014), table 3.2, from memory; a plan is made under 6.4 with potassium bicarbonate, which feeds the plants as well.
 */
final class PhOutlook {
    private static final double AIM = 6.8;
    private static final double PLAN_UNDER = 6.4;
    private static final double WATCH_OVER = 7.4;
    private static final PhPlan.Product BASE = new PhPlan.Product(PhReagent.POTASSIUM_BICARBONATE, 100);

    private PhOutlook() {}

    static PhStatus of(Site site, WaterNow water, @Nullable FeedLoad recent, Instant now) {
        double perDay = recent == null ? Double.NaN : -recent.alkalinityGPerDay() * 1000 / water.volumeL();
        String missing = Double.isNaN(water.ph())
                ? "No pH reading today or yesterday."
                : Double.isNaN(water.alkalinityMgL()) ? "No alkalinity test in two weeks: test." : "";
        if (!missing.isEmpty()) {
            return new PhStatus(water.ph(), water.alkalinityMgL(), perDay, null, missing);
        }
        double temperature = Double.isNaN(water.temperatureC()) ? 20 : water.temperatureC();
        String words =
                Sentence.of("pH %.2f at alkalinity %.0f mg/L%s.", water.ph(), water.alkalinityMgL(), falls(perDay));
        try {
            CarbonateWater present = CarbonateWater.ofAlkalinity(temperature, water.ph(), water.alkalinityMgL());
            String mains = " " + PhPlan.mains(present, site.mains());
            if (water.ph() < PLAN_UNDER) {
                PhPlan plan = PhPlan.of(
                        present, AIM, BASE, water.volumeL(), PhPlan.nextMorning(now, site.timeZone()), site.mains());
                return new PhStatus(water.ph(), water.alkalinityMgL(), perDay, plan, words);
            }
            String high = water.ph() > WATCH_OVER
                    ? " It is high for the plants; nitrifying will bring it down, so wait before any acid."
                    : "";
            return new PhStatus(water.ph(), water.alkalinityMgL(), perDay, null, words + high + mains);
        } catch (IllegalArgumentException e) {
            return new PhStatus(
                    water.ph(), water.alkalinityMgL(), perDay, null, words + " No plan: " + e.getMessage() + ".");
        }
    }

    private static String falls(double perDay) {
        return Double.isNaN(perDay) ? "" : Sentence.of("; nitrifying the feed takes %.1f mg/L of it a day", -perDay);
    }
}
