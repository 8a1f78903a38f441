package bywash.rules.engine;

import bywash.rules.detect.FlowFinding;
import bywash.rules.site.Vessel;
import org.jspecify.annotations.Nullable;

/**
 * The latest of one vessel.
 *
 * @param levelMm NaN without a level probe or a believable reading
 * @param volumeL NaN likewise
 * @param freeboardMm water surface to overflow, mm; NaN likewise
 * @param flow what the balance says; null without a level probe
 */
public record VesselStatus(
        Vessel vessel,
        double levelMm,
        double volumeL,
        double freeboardMm,
        @Nullable FlowFinding flow) {}
