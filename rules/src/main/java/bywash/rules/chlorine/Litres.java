package bywash.rules.chlorine;

import bywash.rules.detect.Spread;
import bywash.rules.site.SystemVolume;

/**
 * An amount of water as a range.
 *
 * @param lowL low end, L, 0 or more
 * @param likelyL best single value, L
 * @param highL high end, L
 */
public record Litres(double lowL, double likelyL, double highL) {
    public Litres {
        if (!(lowL >= 0 && lowL <= likelyL && likelyL <= highL)) {
            throw new IllegalArgumentException("litres " + lowL + ", " + likelyL + ", " + highL + " must rise from 0");
        }
    }

    /** A known amount. */
    public static Litres of(double litres) {
        double l = StrictMath.max(0, litres);
        return new Litres(l, l, l);
    }

    /** What was found to have moved. */
    public static Litres of(Spread moved) {
        return new Litres(moved.lowL(), moved.likelyL(), moved.highL());
    }

    /** The same, but no less than is known already. */
    public Litres atLeast(double litres) {
        double low = StrictMath.max(lowL, litres);
        double likely = StrictMath.max(likelyL, low);
        return new Litres(low, likely, StrictMath.max(highL, likely));
    }

    /** What a system holds. */
    static Litres of(SystemVolume volume) {
        return new Litres(volume.lowL(), volume.likelyL(), volume.highL());
    }

    /** What is more than an amount. */
    public Litres beyond(double litres) {
        return new Litres(
                StrictMath.max(0, lowL - litres),
                StrictMath.max(0, likelyL - litres),
                StrictMath.max(0, highL - litres));
    }

    /** An amount, give or take, that is a part of another. */
    static Litres within(double litres, double giveOrTake, Litres whole) {
        double high = StrictMath.max(0, StrictMath.min(whole.highL, litres + giveOrTake));
        double likely = StrictMath.max(0, StrictMath.min(StrictMath.min(high, whole.likelyL), litres));
        return new Litres(StrictMath.max(0, StrictMath.min(likely, litres - giveOrTake)), likely, high);
    }

    /** What is left without a part, which has its own error. */
    Litres less(Litres part) {
        return new Litres(
                StrictMath.max(0, lowL - part.highL), likelyL - part.likelyL, StrictMath.max(0, highL - part.lowL));
    }

    /** Both together, both at their low or at their high end. */
    Litres plus(Litres other) {
        return new Litres(lowL + other.lowL, likelyL + other.likelyL, highL + other.highL);
    }
}
