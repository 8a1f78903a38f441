package bywash.rules.chlorine;

import bywash.rules.water.ChlorineLimit;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Total residual chlorine in the system, as Cl2, ug/L, with its range and evidence.
 *
 * @param lowUgL 5 % point of what balance and probes say together, ug/L
 * @param likelyUgL its median, ug/L
 * @param highUgL its 95 % point or the balance's, whichever is higher, ug/L
 * @param probability that the acute criterion is passed, 0 to 1
 * @param acuteAt when the likely value passes the acute criterion at the present rate; null when it does not
 * @param evidence one line each, in words, with the weight
 * @param acute when the acute criterion is passed, with its range
 * @param chronic when the chronic criterion is passed, with its range
 * @param balanceUgL likely value by the balance alone, which all that lies ahead is reckoned from, ug/L
 */
public record ResidualEstimate(
        double lowUgL,
        double likelyUgL,
        double highUgL,
        double probability,
        @Nullable Instant acuteAt,
        List<String> evidence,
        Crossing acute,
        Crossing chronic,
        double balanceUgL) {
    /** US EPA criterion maximum concentration, fresh water, one hour, ug/L. */
    public static final double ACUTE_UG_L = ChlorineLimit.EPA_ACUTE.limitUgL();

    /** US EPA criterion continuous concentration, fresh water, four days, ug/L. */
    public static final double CHRONIC_UG_L = ChlorineLimit.EPA_CHRONIC.limitUgL();

    public ResidualEstimate {
        evidence = List.copyOf(evidence);
    }

    /** Where the probes say much less than the balance does, what lies ahead holds only if they are wrong. */
    public boolean doubted() {
        return likelyUgL < balanceUgL / 2;
    }

    /** By the balance alone. */
    public ResidualEstimate(
            double lowUgL,
            double likelyUgL,
            double highUgL,
            double probability,
            @Nullable Instant acuteAt,
            List<String> evidence,
            Crossing acute,
            Crossing chronic) {
        this(lowUgL, likelyUgL, highUgL, probability, acuteAt, evidence, acute, chronic, likelyUgL);
    }

    /** Without what lies ahead of the range. */
    public ResidualEstimate(
            double lowUgL,
            double likelyUgL,
            double highUgL,
            double probability,
            @Nullable Instant acuteAt,
            List<String> evidence) {
        this(
                lowUgL,
                likelyUgL,
                highUgL,
                probability,
                acuteAt,
                evidence,
                Crossing.none(ACUTE_UG_L),
                Crossing.none(CHRONIC_UG_L));
    }
}
