package bywash.rules.response;

import bywash.rules.chlorine.Litres;
import java.time.Instant;

/**
 * Water that moved in one go into or out of one vessel.
 *
 * @param since its onset
 * @param in whether it came in, else it went out
 * @param litres either way 0 or more
 * @param source where it came from, empty where not known
 * @param declared whether the grower had declared all of it
 * @param declaredL how much of it was declared, of a release that ran over; else 0
 */
public record WaterRun(
        String vessel, Instant since, boolean in, Litres litres, String source, boolean declared, double declaredL) {
    /** All or nothing of it declared. */
    public WaterRun(String vessel, Instant since, boolean in, Litres litres, String source, boolean declared) {
        this(vessel, since, in, litres, source, declared, 0);
    }
}
