package bywash.rules.husbandry.bacteria;

import bywash.rules.event.OperatorEntry.WaterTest;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Learns from tests what load the bacteria carry. A pair of tests within three days, ammonia at most 0.5 and nitrite at most
 * 0.5 mg/L, proves the load of that time; a test above 1 of either unproves it down to four fifths of the load. FAO Technical Paper 589
 * (2014) asks for both close to zero and under 1; the halves and fifths are common practice, no source.
 */
public final class BacteriaBook {
    private static final double GOOD_MG_L = 0.5;
    private static final double BAD_MG_L = 1.0;
    private static final double SET_BACK = 0.8;
    private static final Duration PAIR = Duration.ofDays(3);
    private static final Duration HOLDS = Duration.ofDays(60);

    private @Nullable WaterTest ammonia;
    private @Nullable WaterTest nitrite;
    private @Nullable ProvenLoad proven;

    /**
     * Takes a test.
     *
     * @param tanGPerDay what the feed of the last week brought, g/d; NaN where none is on record
     * @param temperatureC of the water (Cel); NaN where not known
     */
    public void tested(WaterTest test, double tanGPerDay, double temperatureC) {
        if (test.quantity().equals("total-ammonia")) {
            ammonia = test;
        } else if (test.quantity().equals("nitrite")) {
            nitrite = test;
        } else {
            return;
        }
        if (!(tanGPerDay > 0)) {
            return;
        }
        ProvenLoad now = new ProvenLoad(tanGPerDay, temperatureC, test.at());
        if (test.value() > BAD_MG_L) {
            if (proven != null && proven.at(temperatureC) > SET_BACK * tanGPerDay) {
                proven = new ProvenLoad(SET_BACK * tanGPerDay, temperatureC, test.at());
            }
        } else if (good(ammonia, test.at()) && good(nitrite, test.at())) {
            boolean more = proven == null
                    || now.tanGPerDay() >= proven.at(temperatureC)
                    || test.at().isAfter(proven.at().plus(HOLDS));
            proven = more ? now : proven;
        }
    }

    private static boolean good(@Nullable WaterTest test, Instant at) {
        return test != null
                && test.value() <= GOOD_MG_L
                && !at.isAfter(test.at().plus(PAIR));
    }

    /** The highest load shown in the last two months; null where none was. */
    public @Nullable ProvenLoad proven(Instant now) {
        return proven != null && !now.isAfter(proven.at().plus(HOLDS)) ? proven : null;
    }
}
