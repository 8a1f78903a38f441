package bywash.samples.simulation;

/**
 * What differs between variants of the site.
 *
 * @param sumpM2 plan area of the sump, which spills at 0.68 m
 * @param evaporationLPerH mean over the day; it swings by 80 % with the sun
 * @param pumpProbe whether the pump's state is told
 */
public record SiteModel(BedModel beds, ProbeModel probe, double sumpM2, double evaporationLPerH, boolean pumpProbe) {
    /** The demo site: three beds of 62 to 93 L. */
    public static SiteModel larkfield() {
        return new SiteModel(new BedModel(3, 12, 0.04, 0, false), new ProbeModel(1.5, 10, 0.1, 0, 0), 0.96, 0.8, true);
    }

    /** Volume at which the sump spills, L. */
    public double sumpFullL() {
        return 680 * sumpM2;
    }

    public SiteModel withBeds(BedModel other) {
        return new SiteModel(other, probe, sumpM2, evaporationLPerH, pumpProbe);
    }

    public SiteModel withProbe(ProbeModel other) {
        return new SiteModel(beds, other, sumpM2, evaporationLPerH, pumpProbe);
    }

    public SiteModel withSump(double areaM2) {
        return new SiteModel(beds, probe, areaM2, evaporationLPerH, pumpProbe);
    }

    public SiteModel withEvaporation(double litresPerH) {
        return new SiteModel(beds, probe, sumpM2, litresPerH, pumpProbe);
    }

    public SiteModel withPumpProbe(boolean told) {
        return new SiteModel(beds, probe, sumpM2, evaporationLPerH, told);
    }
}
