package bywash.samples.simulation;

/**
 * What differs between variants of the site.
 *
 * @param periodMin fill time of a middle bed, minutes
 * @param jitter spread of the trip volume as a share
 * @param noiseMm of a level sample, one standard deviation
 * @param everyS seconds between level samples
 */
public record SiteModel(
        int beds, double periodMin, double jitter, double noiseMm, int everyS, double evaporationLPerH) {
    /** The demo site: three beds of 62 to 93 L. */
    public static SiteModel larkfield() {
        return new SiteModel(3, 12, 0.04, 1.5, 10, 0.8);
    }
}
