package bywash.rules.chlorine;

import bywash.rules.water.LossRate;
import bywash.rules.water.MixedTank;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;

/**
 * One inflow as the balance sees it at a moment: so many litres evenly since its onset.
 *
 * @param since onset
 * @param litres since the onset
 * @param rateLMin now, L/min, 0 or more
 * @param ifMains residual of the water, where water of unknown source is mains water
 * @param ifOther residual where it is not
 * @param sourceWords where it comes from
 */
public record Inflow(
        Instant since,
        Instant until,
        Litres litres,
        double rateLMin,
        Residual ifMains,
        Residual ifOther,
        String sourceWords) {
    public Inflow {
        Objects.requireNonNull(since, "since");
        Objects.requireNonNull(until, "until");
        Objects.requireNonNull(litres, "litres");
        Objects.requireNonNull(ifMains, "ifMains");
        Objects.requireNonNull(ifOther, "ifOther");
    }

    private static final double LEAST_MIN = 1.0 / 60;
    /** Litres are given with two standard errors either way. */
    private static final double LITRES_Z = 2;

    /** Of a source that is known. */
    Inflow(Instant since, Instant until, Litres litres, double rateLMin, Residual source, String sourceWords) {
        this(since, until, litres, rateLMin, source, source, sourceWords);
    }

    /** Residual of the water whatever it is. */
    Residual source() {
        return Residual.between(
                unknown() ? 0 : ifMains.lowMgL(),
                ifMains.likelyMgL(),
                StrictMath.max(ifMains.highMgL(), ifOther.highMgL()));
    }

    /** Whether it may or may not be mains water. */
    boolean unknown() {
        return !ifMains.equals(ifOther);
    }

    Inflow with(Instant from, Litres of) {
        return new Inflow(from, until, of, rateLMin, ifMains, ifOther, sourceWords);
    }

    double minutes() {
        return StrictMath.max(LEAST_MIN, Duration.between(since, until).toMillis() / 60_000.0);
    }

    /**
     * What it adds to the residual of the mixed system, mg/L, with loss on the way. The system held as much less at the
     * onset as has come in; where a vessel spills, the low end lets as much mixed water go as has come in.
     */
    Residual adds(Litres systemL, LossRate loss, boolean spilling) {
        Residual source = source();
        double low = added(litres.lowL(), source.lowMgL(), systemL.highL(), loss.highPerHour(), spilling);
        double likely = added(litres.likelyL(), source.likelyMgL(), systemL.likelyL(), loss.likelyPerHour(), false);
        double high = added(litres.highL(), source.highMgL(), systemL.lowL(), loss.lowPerHour(), false);
        return Residual.between(low, likely, high);
    }

    /** The same for each rate of loss, with the spread of strength, litres and volume, which have nothing to do with each other. */
    Case adds(Residual source, Litres systemL, LossRate loss) {
        double down = root(
                Case.fold(source.likelyMgL(), source.lowMgL()) / Case.Z95,
                Case.fold(litres.likelyL(), litres.lowL()) / LITRES_Z,
                Case.fold(systemL.highL(), systemL.likelyL()) / Case.Z95);
        double up = root(
                Case.fold(source.highMgL(), source.likelyMgL()) / Case.Z95,
                Case.fold(litres.highL(), litres.likelyL()) / LITRES_Z,
                Case.fold(systemL.likelyL(), systemL.lowL()) / Case.Z95);
        return Case.of(
                1,
                loss,
                perHour -> added(litres.likelyL(), source.likelyMgL(), systemL.likelyL(), perHour, false),
                down,
                up);
    }

    private static double root(double a, double b, double c) {
        return StrictMath.sqrt(a * a + b * b + c * c);
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
