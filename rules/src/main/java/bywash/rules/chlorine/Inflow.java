package bywash.rules.chlorine;

import bywash.rules.water.LossRate;
import bywash.rules.water.MixedTank;
import java.time.Duration;
import java.time.Instant;

/**
 * One inflow as the balance sees it at a moment: so many litres evenly since its onset.
 *
 * @param since onset
 * @param litres since the onset
 * @param rateLMin now, L/min, 0 or more
 * @param source residual of the water
 * @param sourceWords where it comes from
 */
record Inflow(Instant since, Instant until, Litres litres, double rateLMin, Residual source, String sourceWords) {
    private static final double LEAST_MIN = 1.0 / 60;

    double minutes() {
        return StrictMath.max(LEAST_MIN, Duration.between(since, until).toMillis() / 60_000.0);
    }

    /**
     * What it adds to the residual of the mixed system, mg/L, with loss on the way. The system held as much less at the
     * onset as has come in; where a vessel spills, the low end lets as much mixed water go as has come in.
     */
    Residual adds(Litres systemL, LossRate loss, boolean spilling) {
        double low = added(litres.lowL(), source.lowMgL(), systemL.highL(), loss.highPerHour(), spilling);
        double likely = added(litres.likelyL(), source.likelyMgL(), systemL.likelyL(), loss.likelyPerHour(), false);
        double high = added(litres.highL(), source.highMgL(), systemL.lowL(), loss.lowPerHour(), false);
        return Residual.between(low, likely, high);
    }

    private double added(double inL, double inMgL, double systemL, double perHour, boolean spilling) {
        if (inL <= 0 || inMgL <= 0) {
            return 0;
        }
        double minutes = minutes();
        MixedTank.Inflow in = new MixedTank.Inflow(StrictMath.min(10_000, inL / minutes), inMgL);
        double startL = spilling ? systemL : StrictMath.max(systemL / 10, systemL - inL);
        MixedTank clean = new MixedTank(startL, 0);
        return (spilling ? clean.overflowing(in, perHour, minutes) : clean.filling(in, perHour, minutes)).residualMgL();
    }
}
