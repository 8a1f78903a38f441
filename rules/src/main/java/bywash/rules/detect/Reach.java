package bywash.rules.detect;

/**
 * The least flow that would be found within some minutes, from what a vessel's views know now. L/min.
 *
 * @param bedsL what the siphon beds can hold; 0 without siphons
 * @param standingSdLMin error of the learned slope itself
 * @param logRatio what a ramp must reach
 * @param learned whether slopes are judged yet
 * @param resolved whether samples are near enough to tell drains from fills
 */
record Reach(double bedsL, double everyMin, double standingSdLMin, double logRatio, boolean learned, boolean resolved) {
    /** So far above the limit noise keeps a flow from being found in one case of six only. */
    static final double LIKELY_SIGMAS = 1;

    /** At any time, and before anything is learned alone, a rise of all that the beds hold is told within the minutes; NaN for nothing. */
    double findsLMin(double minutes, double slopesMin3, SpikeGuard guard, FillPhase fill, SlowDrift slow) {
        double noiseL = guard.noiseL();
        if (!guard.learned() || !learned && (bedsL == 0 || !fill.roughlyLearned())) {
            return Double.NaN;
        }
        double large =
                bedsL > 0 ? StrictMath.max(FillPhase.SURE_DRAIN_L_MIN, (bedsL + 6 * noiseL) / minutes) : Double.NaN;
        if (!learned) {
            return large;
        }
        double ramp = resolved ? byRamp(slopesMin3, noiseL) : Double.NaN;
        double least = StrictMath.max(FlowEvidence.FLOOR_L_MIN, (3 + 2 * noiseL) / minutes);
        return StrictMath.max(least, least(large, least(ramp, slow.findsLMin(minutes))));
    }

    /** A slope in white noise with a level of its own over T has the information T^3 / (12 every noise^2). */
    private double byRamp(double slopesMin3, double noiseL) {
        double information = slopesMin3 / (12 * everyMin * noiseL * noiseL);
        return (StrictMath.sqrt(2 * logRatio) + LIKELY_SIGMAS)
                * StrictMath.sqrt(1 / information + standingSdLMin * standingSdLMin);
    }

    /** The least of two, either of which may be unknown. */
    static double least(double a, double b) {
        return Double.isNaN(a) ? b : Double.isNaN(b) ? a : StrictMath.min(a, b);
    }
}
