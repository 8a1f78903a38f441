package bywash.rules.site;

import java.util.function.ToDoubleFunction;

/**
 * The water that recirculates, as a range: what a residual, a dose or ammonia spreads through. Reserves stand apart.
 *
 * <p>A vessel with a believed level counts what its shape holds at that level. One known by a volume alone counts that
 * volume, 10 % less at the low end and 5 % more at the high end. A sump without a level counts 0.3 to 1 of the volume at
 * its overflow, 0.6 likely; any other shaped vessel 0.9 to 1 of it. A bed of media holds its pores: a tenth of them just
 * after a siphon, all of them just before, half on average. These shares are common practice, no source; the porosity
 * is the site file's {@code media-porosity} or {@link Vessel#USUAL_POROSITY}. Pipes are left out.
 *
 * @param lowL low end, L
 * @param likelyL best single value, L
 * @param highL high end, L
 */
public record SystemVolume(double lowL, double likelyL, double highL) {
    private static final double LEAST_L = 0.1;

    public SystemVolume {
        if (!(lowL > 0 && lowL <= likelyL && likelyL <= highL)) {
            throw new IllegalArgumentException(
                    "system volume " + lowL + ", " + likelyL + ", " + highL + " L must rise from above 0");
        }
    }

    /** Where no level is known. */
    public static SystemVolume of(Site site) {
        return of(site, vessel -> Double.NaN);
    }

    /**
     * The volume at the levels now.
     *
     * @param levelMm depth in a vessel, mm; NaN where it is not known
     */
    public static SystemVolume of(Site site, ToDoubleFunction<Vessel> levelMm) {
        double low = 0;
        double likely = 0;
        double high = 0;
        for (Vessel vessel : site.vessels()) {
            if (vessel.role() != VesselRole.RESERVE) {
                SystemVolume held = held(vessel, levelMm.applyAsDouble(vessel));
                low += held.lowL;
                likely += held.likelyL;
                high += held.highL;
            }
        }
        return likely > LEAST_L ? new SystemVolume(low, likely, high) : new SystemVolume(LEAST_L, LEAST_L, LEAST_L);
    }

    private static SystemVolume held(Vessel vessel, double levelMm) {
        if (vessel.shape() != null && !Double.isNaN(levelMm)) {
            double inside = StrictMath.max(0, StrictMath.min(vessel.shape().heightMm(), levelMm));
            return share(StrictMath.max(1e-3, vessel.shape().volumeL(inside)), 1, 1, 1);
        }
        double poresL = vessel.volumeL() * vessel.mediaPorosity();
        return switch (vessel.role()) {
            case GROW_BED -> vessel.mediaPorosity() < 1 ? share(poresL, 0.1, 0.5, 1) : declared(vessel);
            case SUMP -> vessel.shape() == null ? declared(vessel) : share(vessel.volumeL(), 0.3, 0.6, 1);
            case FISH_TANK, RESERVE -> declared(vessel);
        };
    }

    private static SystemVolume declared(Vessel vessel) {
        return vessel.shape() == null ? share(vessel.volumeL(), 0.9, 1, 1.05) : share(vessel.volumeL(), 0.9, 0.95, 1);
    }

    private static SystemVolume share(double volumeL, double low, double likely, double high) {
        return new SystemVolume(volumeL * low, volumeL * likely, volumeL * high);
    }
}
