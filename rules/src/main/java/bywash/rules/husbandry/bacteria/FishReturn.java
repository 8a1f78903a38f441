package bywash.rules.husbandry.bacteria;

import bywash.rules.husbandry.bacteria.CheckItem.Answer;
import bywash.rules.husbandry.bacteria.PresentWater.Seen;
import bywash.rules.site.Band;
import bywash.rules.site.Need;
import bywash.rules.site.Species;
import bywash.rules.text.Names;
import bywash.rules.water.UnionisedAmmonia;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What must hold before fish come back, against the present readings. Bands are the species'; the 24-hour proof of the bacteria (a
 * dose of 1 to 2 mg/L gone, with ammonia and nitrite both at most 0.5) and the ages are common practice, no source.
 */
public final class FishReturn {
    private static final Duration READING_HOLDS = Duration.ofMinutes(30);
    private static final Duration TEST_HOLDS = Duration.ofDays(1);
    /** As low as the usual kits can tell. */
    private static final double CLEAR_MG_L = 0.5;

    private static final double CHRONIC_UG_L = 11;

    private final Species species;
    private final PresentWater water;
    private final Instant now;
    private final List<CheckItem> items = new ArrayList<>();

    private FishReturn(Species species, PresentWater water, Instant now) {
        this.species = species;
        this.water = water;
        this.now = now;
    }

    /** The checklist, in the order to go through it. */
    public static List<CheckItem> of(Species species, PresentWater water, Instant now) {
        FishReturn list = new FishReturn(species, water, now);
        list.probe("temperature", Need.TEMPERATURE, "C");
        list.probe("ph", Need.PH, "");
        list.probe("dissolved-oxygen", Need.OXYGEN, "mg/L");
        list.test("total-ammonia", CLEAR_MG_L);
        list.test("nitrite", Math.min(CLEAR_MG_L, species.most(Need.NITRITE)));
        list.unionised();
        list.chlorine();
        list.asks();
        return List.copyOf(list.items);
    }

    /** Whether every line that the tool can answer says yes. */
    public static boolean ready(List<CheckItem> items) {
        return items.stream().allMatch(i -> i.answer() == Answer.YES || i.answer() == Answer.ASK);
    }

    private void probe(String quantity, Need need, String unit) {
        Band band = species.band(need).map(b -> b.band()).orElse(null);
        Seen seen = water.probes().apply(quantity);
        String what = quantity.equals("ph") ? "pH" : quantity.replace('-', ' ');
        if (band == null) {
            items.add(new CheckItem(
                    what, "no band known for " + Names.species(species.id()), words(seen, unit), Answer.NOT_KNOWN));
            return;
        }
        boolean fresh = seen != null
                && !now.isAfter(seen.at().plus(READING_HOLDS))
                && seen.doubt().isEmpty();
        Answer answer = !fresh ? Answer.NOT_KNOWN : band.contains(seen.value()) ? Answer.YES : Answer.NO;
        items.add(new CheckItem(what, band(band, unit), words(seen, unit), answer));
    }

    private void test(String quantity, double most) {
        Seen seen = water.tests().apply(quantity);
        items.add(new CheckItem(
                quantity.replace('-', ' ') + " a day after a dose",
                String.format(Locale.ROOT, "at most %.2f mg/L", most),
                words(seen, "mg/L"),
                answer(seen, most)));
    }

    private Answer answer(@Nullable Seen seen, double most) {
        if (seen == null || now.isAfter(seen.at().plus(TEST_HOLDS))) {
            return Answer.NOT_KNOWN;
        }
        return seen.value() <= most ? Answer.YES : Answer.NO;
    }

    private void unionised() {
        double most = species.most(Need.UNIONISED_AMMONIA);
        Seen tan = water.tests().apply("total-ammonia");
        Seen ph = water.probes().apply("ph");
        Seen temperature = water.probes().apply("temperature");
        String need = String.format(Locale.ROOT, "at most %.3f mg/L", most);
        boolean known = tan != null
                && ph != null
                && temperature != null
                && ph.value() >= 4
                && ph.value() <= 11
                && temperature.value() >= 0
                && temperature.value() <= 40;
        if (!known) {
            items.add(new CheckItem("un-ionised ammonia", need, "not known", Answer.NOT_KNOWN));
            return;
        }
        double value = UnionisedAmmonia.unionisedMgL(tan.value(), ph.value(), temperature.value());
        String present =
                String.format(Locale.ROOT, "%.4f mg/L at pH %.2f and %.1f C", value, ph.value(), temperature.value());
        boolean fresh = !now.isAfter(tan.at().plus(TEST_HOLDS)) && ph.doubt().isEmpty();
        items.add(new CheckItem(
                "un-ionised ammonia",
                need,
                present,
                !fresh ? Answer.NOT_KNOWN : value <= most ? Answer.YES : Answer.NO));
    }

    private void chlorine() {
        Seen test = water.tests().apply("total-chlorine");
        boolean fresh = test != null && !now.isAfter(test.at().plus(TEST_HOLDS));
        String estimate = String.format(Locale.ROOT, "estimate at most %.0f ug/L", water.residualHighUgL());
        double own = species.most(Need.CHLORINE);
        double most = Math.min(CHRONIC_UG_L, own);
        String whose = own < CHRONIC_UG_L ? "the limit of " + Names.species(species.id()) : "EPA 1985, chronic";
        Answer answer = !fresh
                ? Answer.NOT_KNOWN
                : test.value() <= 0.02 && water.residualHighUgL() <= most ? Answer.YES : Answer.NO;
        items.add(new CheckItem(
                "total chlorine by DPD test",
                String.format(Locale.ROOT, "none found, and the estimate under %.0f ug/L (%s)", most, whose),
                words(test, "mg/L") + "; " + estimate,
                answer));
    }

    private void asks() {
        items.add(new CheckItem(
                "a dose of 1 to 2 mg/L of ammonia was gone within a day, twice",
                "as tested",
                "your tests",
                Answer.ASK));
        items.add(new CheckItem(
                "mains line shut, alarms answered, spare air at hand", "seen by eye", "your eyes", Answer.ASK));
        items.add(new CheckItem(
                "fish from a source that is lawful and looked healthy; few first, let in slowly to the water",
                "local rules and licensed advice on welfare and movement",
                "your word",
                Answer.ASK));
    }

    private String words(@Nullable Seen seen, String unit) {
        return seen == null ? "not known" : seen.words(now, unit);
    }

    private static String band(Band band, String unit) {
        String tail = unit.isEmpty() ? "" : " " + unit;
        if (Double.isInfinite(band.high())) {
            return String.format(Locale.ROOT, "at least %.1f%s", band.low(), tail);
        }
        return String.format(Locale.ROOT, "%.1f to %.1f%s", band.low(), band.high(), tail);
    }
}
