package bywash.rules.detect;

import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Site;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** Watches every vessel with a level probe for water that nobody meant to move. */
public final class WaterBalance {
    public WaterBalance(Site site) {}

    /** A believable level; depth in mm above the floor. */
    public void level(String vessel, Instant at, double depthMm) {}

    /** The circulation pump is known to have started or stopped. */
    public void pump(Instant at, boolean on) {}

    public void topUpStarted(OperatorEntry.TopUpStart entry) {}

    public void topUpEnded(OperatorEntry.TopUpEnd entry) {}

    public void batchFilled(OperatorEntry.BatchFill entry) {}

    /** Event time reached {@code at}; decisions are made here. */
    public void tick(Instant at) {}

    /** What is known of a vessel; null where it has no level probe. */
    public @Nullable FlowFinding finding(String vessel) {
        return null;
    }

    /** The running or last top-up. */
    public @Nullable TopUp topUp() {
        return null;
    }
}
