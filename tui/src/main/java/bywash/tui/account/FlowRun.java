package bywash.tui.account;

import bywash.rules.chlorine.Litres;
import bywash.rules.detect.FlowFinding;
import java.time.Instant;

/**
 * Water that moved into or out of a vessel without a break.
 *
 * @param since estimated onset
 * @param until when it was last seen to move
 * @param in into the vessel, else out of it
 * @param litres with its range of two standard errors
 * @param source where it came from, in words; empty where not known
 * @param verdict what the balance last said of it
 */
public record FlowRun(
        String vessel,
        Instant since,
        Instant until,
        boolean in,
        Litres litres,
        String source,
        FlowFinding.Verdict verdict) {
    /** Whether the grower had declared it. */
    public boolean declared() {
        return verdict == FlowFinding.Verdict.PLANNED;
    }
}
