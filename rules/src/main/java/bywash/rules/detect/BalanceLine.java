package bywash.rules.detect;

import org.jspecify.annotations.Nullable;

/**
 * The water balance of one vessel, or of all that have a level probe, over the last hour. Litres.
 *
 * @param subject vessel id, or {@link #SYSTEM}
 * @param litres held now; NaN while unknown
 * @param changeL change over the hour, swings of siphons averaged out; NaN until an hour was seen
 * @param declaredL how much of it was declared, in positive
 * @param foundL how much of it is water that was found to move undeclared and that alarms tell of, in positive
 * @param usualL how much of it is usual there: evaporation
 * @param seL one standard error of what is left; NaN while not learned
 * @param findsLMin the least flow that would now be found within half an hour, L/min; NaN where none would
 * @param moved the last undeclared water of the vessel within the last two hours; null for none, and for all together
 * @param ranOver whether it stood at its overflow within the last two hours: what ran over shows in no level
 */
public record BalanceLine(
        String subject,
        double litres,
        double changeL,
        double declaredL,
        double foundL,
        double usualL,
        double seL,
        double findsLMin,
        @Nullable Moved moved,
        boolean ranOver) {
    /** The subject of the line on all vessels together. */
    public static final String SYSTEM = "system";

    /** What neither entries, nor what was found, nor habit explain, L; NaN while unknown. */
    public double unexplainedL() {
        return changeL - declaredL - foundL - usualL;
    }
}
