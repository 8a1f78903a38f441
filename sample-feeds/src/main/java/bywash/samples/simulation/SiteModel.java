package bywash.samples.simulation;

/**
 * What differs between variants of the site.
 *
 * @param sumpM2 plan area of the sump, which spills at 0.68 m
 * @param evaporationLPerH mean over the day; it swings by 80 % with the sun
 * @param pumpProbe whether the pump's state is told
 * @param chlorineLossPerH first-order loss of chlorine in the system's water, 1/h, 0 or more
 */
public record SiteModel(
        BedModel beds,
        ProbeModel probe,
        double sumpM2,
        double evaporationLPerH,
        boolean pumpProbe,
        double chlorineLossPerH) {
    private static final double LARKFIELD_LOSS_PER_H = 0.4;

    /** The demo site: three beds of 62 to 93 L. */
    public static SiteModel larkfield() {
        return new SiteModel(
                new BedModel(3, 12, 0.04, 0, false),
                new ProbeModel(1.5, 10, 0.1, 0, 0),
                0.96,
                0.8,
                true,
                LARKFIELD_LOSS_PER_H);
    }

    /** Volume at which the sump spills, L. */
    public double sumpFullL() {
        return 680 * sumpM2;
    }

    public SiteModel withBeds(BedModel other) {
        return new SiteModel(other, probe, sumpM2, evaporationLPerH, pumpProbe, chlorineLossPerH);
    }

    public SiteModel withProbe(ProbeModel other) {
        return new SiteModel(beds, other, sumpM2, evaporationLPerH, pumpProbe, chlorineLossPerH);
    }

    public SiteModel withSump(double areaM2) {
        return new SiteModel(beds, probe, areaM2, evaporationLPerH, pumpProbe, chlorineLossPerH);
    }

    public SiteModel withEvaporation(double litresPerH) {
        return new SiteModel(beds, probe, sumpM2, litresPerH, pumpProbe, chlorineLossPerH);
    }

    public SiteModel withPumpProbe(boolean told) {
        return new SiteModel(beds, probe, sumpM2, evaporationLPerH, told, chlorineLossPerH);
    }

    public SiteModel withChlorineLoss(double perHour) {
        return new SiteModel(beds, probe, sumpM2, evaporationLPerH, pumpProbe, perHour);
    }
}
