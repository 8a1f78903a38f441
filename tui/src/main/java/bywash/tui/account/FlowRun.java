package bywash.tui.account;

import bywash.rules.chlorine.Litres;
import bywash.rules.detect.FlowFinding;
import java.time.Instant;
import java.util.stream.Stream;

/**
 * Water that moved into or out of a vessel without a break.
 *
 * @param since estimated onset
 * @param until when it was last seen to move
 * @param in into the vessel, else out of it
 * @param litres with its range of two standard errors
 * @param source where it came from, in words; empty where not known
 * @param verdict what the balance last said of it
 * @param declaredL how much of it was declared, of a release that ran over; else 0
 */
public record FlowRun(
        String vessel,
        Instant since,
        Instant until,
        boolean in,
        Litres litres,
        String source,
        FlowFinding.Verdict verdict,
        double declaredL) {
    /** What was declared of a release that ran over, and what was not; else itself. */
    Stream<FlowRun> parts() {
        if (declaredL == 0) {
            return Stream.of(this);
        }
        FlowRun planned =
                new FlowRun(vessel, since, until, in, Litres.of(declaredL), source, FlowFinding.Verdict.PLANNED, 0);
        return Stream.of(planned, new FlowRun(vessel, since, until, in, litres.beyond(declaredL), source, verdict, 0));
    }

    /** Whether the grower had declared it. */
    public boolean declared() {
        return verdict == FlowFinding.Verdict.PLANNED;
    }
}
