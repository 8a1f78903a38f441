package bywash.rules.site;

import bywash.rules.text.Figures;
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
 * @param mediaPorosity share of a grow bed that water can fill between the media, above 0 to 1; 1 for a bed without media
 *     and for every other role
 */
public record Vessel(
        String id,
        VesselRole role,
        @Nullable VesselShape shape,
        double volumeL,
        double overflowMm,
        @Nullable String feeds,
        double mediaPorosity) {
    /**
     * Porosity of a bed of media where the site file gives none. Gravel has 25 to 40 %: R. A. Freeze and J. A. Cherry, 1979,
     * Groundwater, table 2.4, from memory; rounder, coarser media such as expanded clay have somewhat more.
     */
    public static final double USUAL_POROSITY = 0.40;

    /** By so much of a vessel's height its level probe may be out; assumed. */
    private static final double PROBE_ERROR = 0.05;

    /** Why its level cannot be so, and what may be wrong; empty where it can, or where the shape is not known. */
    public String impossible(double levelMm) {
        if (shape == null) {
            return "";
        }
        double error = PROBE_ERROR * shape.heightMm();
        return levelMm > shape.heightMm() + error || levelMm < -error
                ? "level " + Figures.of(levelMm, 0) + " mm is outside the vessel of " + Figures.of(shape.heightMm(), 0)
                        + " mm; look at the unit, and at the probe"
                : "";
    }

    /** A vessel whose media, if it is a bed, have the usual porosity. */
    public Vessel(
            String id,
            VesselRole role,
            @Nullable VesselShape shape,
            double volumeL,
            double overflowMm,
            @Nullable String feeds) {
        this(id, role, shape, volumeL, overflowMm, feeds, role == VesselRole.GROW_BED ? USUAL_POROSITY : 1);
    }
}
