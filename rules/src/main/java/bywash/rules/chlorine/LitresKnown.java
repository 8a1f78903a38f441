package bywash.rules.chlorine;

import bywash.rules.detect.FlowFinding;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Litres of one running flow, from findings that are revised as it goes on. What was once known to have come in, two standard
 * errors below its estimate, does not go out again by a later fit: a flow that has stopped but is not yet known to have would
 * else be forgotten little by little.
 */
public final class LitresKnown {
    private @Nullable Instant since;
    private double leastL;

    public LitresKnown() {}

    /** Goes on with a flow of which so much was known before. */
    public LitresKnown(Instant since, double leastL) {
        this.since = since;
        this.leastL = leastL;
    }

    /** The litres of a finding of this flow, either way; a new onset starts anew. */
    public Litres take(FlowFinding finding) {
        if (finding.since() == null || !finding.since().equals(since)) {
            since = finding.since();
            leastL = 0;
        }
        double litres = StrictMath.abs(finding.volumeL());
        double error = 2 * StrictMath.max(0, finding.volumeSeL());
        leastL = StrictMath.max(leastL, litres - error);
        double likely = StrictMath.max(litres, leastL);
        double low = StrictMath.max(0, StrictMath.min(likely, StrictMath.max(leastL, litres - error)));
        return new Litres(low, likely, StrictMath.max(likely, litres + error));
    }
}
