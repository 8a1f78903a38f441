package bywash.rules.husbandry.stock;

/**
 * Feed against gain, mass to mass, feed as weighed and fish as they are.
 *
 * <p>Source: feed given / growth, FAO Fisheries and Aquaculture Technical Paper 589 (2014), section 7.2, read in a public copy. The
 * economic ratio leaves fish that died out of the gain, the biological one counts what they had grown to.
 *
 * @param feedG feed given, g
 * @param gainG gain of the living and the harvested, g
 * @param deadG mass of those that died, g, an estimate
 */
public record FeedConversion(double feedG, double gainG, double deadG) {
    /** NaN where nothing was fed or gained. */
    public double economic() {
        return feedG > 0 && gainG > 0 ? feedG / gainG : Double.NaN;
    }

    /** NaN where nothing was fed or gained. */
    public double biological() {
        return feedG > 0 && gainG + deadG > 0 ? feedG / (gainG + deadG) : Double.NaN;
    }
}
