package bywash.tui.bench;

import bywash.samples.simulation.SiteModel;

/** How soon a ramp in white noise can be told at all: n = (6 sd^2 ln g / (r dt)^2)^(1/3) samples. */
final class InformationLimit {
    private static final double SAMPLES_BETWEEN_FALSE = 30 * 86_400;

    private InformationLimit() {}

    /** Minutes, for a flow into the site's sump with one false alarm in 30 days. */
    static double minutes(SiteModel site, double rateLMin) {
        double everyMin = site.probe().everyS() / 60.0;
        double perSampleMm = StrictMath.abs(rateLMin) / site.sumpM2() * everyMin;
        double sd = site.probe().noiseMm();
        double g = SAMPLES_BETWEEN_FALSE / site.probe().everyS();
        double n = StrictMath.cbrt(6 * sd * sd * StrictMath.log(g) / (perSampleMm * perSampleMm));
        return n * everyMin;
    }
}
