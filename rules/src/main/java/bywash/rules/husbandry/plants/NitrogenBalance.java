package bywash.rules.husbandry.plants;

import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.plants.BedStatus.Stand;
import bywash.rules.husbandry.plants.NitrogenStatus.Verdict;
import bywash.rules.text.Sentence;
import bywash.rules.water.NitrateBalance;
import bywash.rules.water.Nitrification;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Puts the nitrogen of the feed against that of the plants, and both against the tests.
 *
 * <p>Nitrate between 5 and 150 mg/L: FAO Technical Paper 589 (2014), table 3.2, read in a public copy. The mass balance is that of
 * {@link NitrateBalance} with no water exchanged; gas losses and nitrogen in sludge are left out, so it errs on the high side.
 */
public final class NitrogenBalance {
    private static final double LEAST_MG_L = 5;
    private static final double MOST_MG_L = 150;
    private static final Duration WINDOW = Duration.ofDays(28);
    private static final Duration TEST_HOLDS = Duration.ofDays(14);

    private NitrogenBalance() {}

    /**
     * The balance now.
     *
     * @param volumeL of the loop (L, above 0)
     * @param madeGPerDay nitrate nitrogen made of feed and of ammonia dosed, g/d; NaN where neither is on record
     * @param tests of nitrate, as NO3, oldest first
     */
    public static NitrogenStatus of(
            double volumeL, double madeGPerDay, List<BedStatus> beds, List<WaterTest> tests, Instant now) {
        Range taken = Range.NOTHING;
        for (BedStatus bed : beds) {
            taken = taken.plus(bed.uptakeGPerDay());
        }
        WaterTest latest = tests.isEmpty() ? null : tests.get(tests.size() - 1);
        double nitrate = latest == null ? Double.NaN : latest.value();
        Range computed = Double.isNaN(madeGPerDay)
                ? Range.NOTHING
                : new Range(rise(volumeL, madeGPerDay, taken.high()), rise(volumeL, madeGPerDay, taken.low()));
        Slope measured = slope(tests, now);
        boolean fresh = latest != null && !now.isAfter(latest.at().plus(TEST_HOLDS));
        Verdict verdict = verdict(nitrate, fresh, madeGPerDay, taken, measured);
        String words = words(madeGPerDay, taken, nitrate, fresh, computed, measured, verdict);
        return new NitrogenStatus(madeGPerDay, taken, nitrate, computed, measured, verdict, words);
    }

    private static double rise(double volumeL, double madeGPerDay, double takenGPerDay) {
        return new NitrateBalance(volumeL, madeGPerDay, takenGPerDay, 0).risePerDayMgL(0) * Nitrification.NO3_PER_N;
    }

    private static @Nullable Slope slope(List<WaterTest> tests, Instant now) {
        List<Slope.Point> points = new ArrayList<>();
        for (WaterTest test : tests) {
            if (test.at().isAfter(now.minus(WINDOW)) && !test.at().isAfter(now)) {
                points.add(new Slope.Point(Duration.between(now, test.at()).getSeconds() / 86_400.0, test.value()));
            }
        }
        boolean spread = points.size() >= 2
                && points.get(points.size() - 1).days() - points.get(0).days() >= 1;
        return spread ? Slope.of(points) : null;
    }

    /** What is in the water first, then where it goes. */
    private static Verdict verdict(double nitrate, boolean fresh, double made, Range taken, @Nullable Slope measured) {
        if (!fresh) {
            return Double.isNaN(made) || taken.high() == 0
                    ? Verdict.NOT_KNOWN
                    : made > taken.high() ? Verdict.AMPLE : made < taken.low() ? Verdict.SHORT : Verdict.ENOUGH;
        }
        double perDay = measured == null ? 0 : measured.perDay();
        if (nitrate < LEAST_MG_L || nitrate + 14 * perDay < LEAST_MG_L) {
            return Verdict.SHORT;
        }
        return nitrate > MOST_MG_L || nitrate + 14 * perDay > MOST_MG_L ? Verdict.AMPLE : Verdict.ENOUGH;
    }

    private static String words(
            double made,
            Range taken,
            double nitrate,
            boolean fresh,
            Range computed,
            @Nullable Slope measured,
            Verdict verdict) {
        List<String> parts = new ArrayList<>();
        parts.add("For the plants nitrogen is " + verdict.word() + ".");
        parts.add(
                Double.isNaN(made)
                        ? "No feed or ammonia on record."
                        : Sentence.of("Feed and ammonia bring %.2f g of N a day;", made));
        parts.add(
                taken.high() == 0
                        ? (Double.isNaN(made) ? "Nothing" : "nothing") + " is planted on record."
                        : Sentence.of(
                                "%s beds take %.2f to %.2f.",
                                Double.isNaN(made) ? "The" : "the", taken.low(), taken.high()));
        if (!Double.isNaN(made) && taken.high() > 0) {
            parts.add(Sentence.of(
                    "By that nitrate would move %+.1f to %+.1f mg/L a day.", computed.low(), computed.high()));
        }
        if (Double.isNaN(nitrate)) {
            parts.add("No nitrate test on record: test.");
        } else {
            parts.add(Sentence.of("Last test %.0f mg/L%s", nitrate, fresh ? "" : ", over two weeks old: test again"));
            parts.add(measured == null ? "." : measuredWords(measured));
        }
        return String.join(" ", parts).replace(" .", ".").replace(" ,", ",");
    }

    private static String measuredWords(Slope measured) {
        String range = Double.isNaN(measured.halfWidth()) ? "" : Sentence.of(" (+/- %.1f)", measured.halfWidth());
        return Sentence.of(", moving %+.1f%s mg/L a day over %d tests.", measured.perDay(), range, measured.points());
    }

    /** What taking a bed off, or clearing it, would change; in words with the figures. */
    public static String without(NitrogenStatus now, BedStatus bed, double volumeL) {
        Range uptake = bed.uptakeGPerDay();
        Range left = new Range(
                Math.max(0, now.takenGPerDay().low() - uptake.low()),
                Math.max(0, now.takenGPerDay().high() - uptake.high()));
        String area = Sentence.of(
                "Without %s (%.1f m2 of %s) the beds take %s instead of %.2f to %.2f",
                bed.vessel(),
                bed.plantedM2(),
                crops(bed),
                left.high() > 0 ? Sentence.of("%.2f to %.2f g of N a day", left.low(), left.high()) : "no nitrogen",
                now.takenGPerDay().low(),
                now.takenGPerDay().high());
        if (Double.isNaN(now.madeGPerDay())) {
            return area + ".";
        }
        String least = Sentence.of("%+.1f", rise(volumeL, now.madeGPerDay(), left.high()));
        String most = Sentence.of("%+.1f", rise(volumeL, now.madeGPerDay(), left.low()));
        return area + "; nitrate would move " + (least.equals(most) ? least : least + " to " + most) + " mg/L a day.";
    }

    private static String crops(BedStatus bed) {
        return bed.stands().isEmpty()
                ? "nothing"
                : String.join(
                        " and ",
                        bed.stands().stream().map(Stand::word).distinct().toList());
    }
}
