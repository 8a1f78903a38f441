package bywash.rules.site;

import bywash.rules.vessel.VesselShape;
import org.jspecify.annotations.Nullable;

/**
 * One vessel.
 *
 * @param id its name in the site file, [a-z0-9-]+
 * @param shape null where only a volume is known
 * @param volumeL working volume, L; for a shaped vessel the volume at the overflow
 * @param overflowMm depth at which it overflows, mm; the shape's height where the file gives none; NaN without shape
 * @param feeds for a reserve, the vessel it releases into
 */
public record Vessel(
        String id,
        VesselRole role,
        @Nullable VesselShape shape,
        double volumeL,
        double overflowMm,
        @Nullable String feeds) {}
