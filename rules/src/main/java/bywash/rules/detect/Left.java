package bywash.rules.detect;

/**
 * What may be left of a flow that seems to be over: its valve may have been turned far down instead of shut. Every lesser
 * rate is weighed against none by the slope since then. L/min, signed as the flow is.
 *
 * @param odds that some of it still runs, to one that none does
 * @param meanLMin what is left in the mean, of none and of every lesser rate
 * @param sdLMin one standard deviation of it
 */
record Left(double odds, double meanLMin, double sdLMin) {
    /** For one valve that is turned down so many are shut: odds, before the slopes since then are heard. */
    private static final double TURNED_DOWN = 0.1;

    static final Left NONE = new Left(0, 0, 0);
    /** Numbers stay finite; so much is certain. */
    private static final double MOST_LOG = 500;

    private static final int RATES = 32;

    /** @param rateLMin of the flow before; @param since the slope from its end on */
    static Left of(double rateLMin, Slope since) {
        double whole = StrictMath.abs(rateLMin);
        double seen = since.rateLMin() * StrictMath.signum(rateLMin);
        double odds = 0;
        double sum = 0;
        double squares = 0;
        for (int k = 0; k < RATES; k++) {
            double share = (k + 0.5) / RATES;
            double r = whole * share * share; // so that far down is likelier than by a little
            if (r >= FlowEvidence.FLOOR_L_MIN) {
                double log = (2 * seen - r) * r / (2 * since.seLMin() * since.seLMin());
                double w = TURNED_DOWN * StrictMath.exp(StrictMath.min(MOST_LOG, log)) / RATES;
                odds += w;
                sum += w * r;
                squares += w * r * r;
            }
        }
        double mean = sum / (1 + odds);
        double variance = StrictMath.max(0, squares / (1 + odds) - mean * mean);
        return new Left(odds, StrictMath.signum(rateLMin) * mean, StrictMath.sqrt(variance));
    }
}
