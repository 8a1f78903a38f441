package bywash.rules.detect;

/**
 * The water balance of one vessel, or of all that have a level probe, over the last hour. Litres.
 *
 * @param subject vessel id, or {@link #SYSTEM}
 * @param litres held now; NaN while unknown
 * @param changeL change over the hour, swings of siphons averaged out; NaN until an hour was seen
 * @param declaredL how much of it was declared, in positive
 * @param usualL how much of it is usual there: evaporation
 * @param seL one standard error of the change; NaN while not learned
 * @param findsLMin the least flow that would now be found within half an hour, L/min; NaN where none would
 */
public record BalanceLine(
        String subject, double litres, double changeL, double declaredL, double usualL, double seL, double findsLMin) {
    /** The subject of the line on all vessels together. */
    public static final String SYSTEM = "system";

    /** What neither entries nor habit explain, L; NaN while unknown. */
    public double unexplainedL() {
        return changeL - declaredL - usualL;
    }
}
