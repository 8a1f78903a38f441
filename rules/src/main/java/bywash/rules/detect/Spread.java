package bywash.rules.detect;

import bywash.rules.text.Figures;

/**
 * An amount of water that is an estimate, never shown without its range. Litres, 0 or more.
 *
 * @param lowL two standard errors below
 * @param likelyL best single figure
 * @param highL two standard errors above
 */
public record Spread(double lowL, double likelyL, double highL) {
    /** Of an amount either way and its standard error; an error that is not known counts as none. */
    public static Spread of(double litres, double standardErrorL) {
        double l = StrictMath.abs(litres);
        double error = Double.isFinite(standardErrorL) ? 2 * StrictMath.max(0, standardErrorL) : 0;
        return new Spread(StrictMath.max(0, l - error), l, l + error);
    }

    /** Such as {@code 280 L (250 to 310 L)}. */
    public String words() {
        return Figures.of(likelyL, 0) + " L (" + Figures.of(lowL, 0) + " to " + Figures.of(highL, 0) + " L)";
    }
}
