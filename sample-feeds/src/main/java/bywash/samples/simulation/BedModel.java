package bywash.samples.simulation;

/**
 * The siphon beds of a site.
 *
 * @param count 0 to 6
 * @param fillMin minutes in which a middle bed fills
 * @param jitter spread of the trip volume from cycle to cycle, as a share
 * @param flowSwing share by which the pump's flow wanders over days
 * @param varied whether trip volumes (60 to 95 L), shares and drains are drawn from the seed; else they are Larkfield's
 */
public record BedModel(int count, double fillMin, double jitter, double flowSwing, boolean varied) {
    /** Refuses a number of beds that the site has no room for. */
    public BedModel {
        if (count < 0 || count > 6) {
            throw new IllegalArgumentException("count " + count + ": 0 to 6 beds");
        }
    }
}
