package bywash.rules.water;

/**
 * A first-order rate of loss with its range.
 *
 * @param lowPerHour low end (1/h, 0 or more)
 * @param likelyPerHour best single value (1/h)
 * @param highPerHour high end (1/h)
 */
public record LossRate(double lowPerHour, double likelyPerHour, double highPerHour) {
    private static final double MOST_PER_HOUR = 1000;

    /** Refuses rates below zero or out of order. */
    public LossRate {
        Valid.within("lowPerHour", lowPerHour, 0, MOST_PER_HOUR, "1/h");
        Valid.within("likelyPerHour", likelyPerHour, lowPerHour, MOST_PER_HOUR, "1/h");
        Valid.within("highPerHour", highPerHour, likelyPerHour, MOST_PER_HOUR, "1/h");
    }
}
