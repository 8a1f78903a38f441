package bywash.rules.water;

/**
 * Criteria for total ammonia nitrogen in fresh water by pH and temperature.
 *
 * <p>Acute: 1-hour average; chronic: 30-day average; highest 4-day average 2.5 times the chronic one; none exceeded more than
 * once in 3 years on average. They protect wild communities, mussels included, and so are strict for a fish tank.
 *
 * <p>Source: US EPA, 2013, Aquatic life ambient water quality criteria for ammonia, freshwater, EPA-822-R-13-001, equations for
 * the criterion maximum and continuous concentrations and appendix N (mussels absent). Range: pH 6.5-9.0, 0-30 Cel. Accuracy:
 * the printed tables to two figures.
 */
public final class AmmoniaCriteria {
    private AmmoniaCriteria() {}

    /** Acute criterion (mg/L as N) where salmonids and trout live. */
    public static double acuteWithTrout(double ph, double temperatureC) {
        check(ph, temperatureC);
        double coldFish = 0.275 / (1 + ten(7.204 - ph)) + 39.0 / (1 + ten(ph - 7.204));
        return Math.min(coldFish, 0.7249 * acutePh(ph) * 23.12 * ten(0.036 * (20 - temperatureC)));
    }

    /** Acute criterion (mg/L as N) where salmonids and trout are absent. */
    public static double acuteWithoutTrout(double ph, double temperatureC) {
        check(ph, temperatureC);
        return 0.7249 * acutePh(ph) * Math.min(51.93, 23.12 * ten(0.036 * (20 - temperatureC)));
    }

    /** Acute criterion (mg/L as N) where both mussels and trout are absent. */
    public static double acuteWithoutMusselsOrTrout(double ph, double temperatureC) {
        check(ph, temperatureC);
        return 0.7249 * acutePh(ph) * Math.min(51.93, 62.15 * ten(0.036 * (20 - temperatureC)));
    }

    /** Chronic criterion (mg/L as N), mussels present. */
    public static double chronic(double ph, double temperatureC) {
        check(ph, temperatureC);
        return 0.8876 * chronicPh(ph) * 2.126 * ten(0.028 * (20 - Math.max(temperatureC, 7)));
    }

    /** Chronic criterion (mg/L as N), mussels absent, with or without young fish to protect. */
    public static double chronicWithoutMussels(double ph, double temperatureC, boolean youngFish) {
        check(ph, temperatureC);
        double base = 0.9405 * chronicPh(ph);
        return youngFish
                ? base * Math.min(6.920, 7.547 * ten(0.028 * (20 - temperatureC)))
                : base * 7.547 * ten(0.028 * (20 - Math.max(temperatureC, 7)));
    }

    /** Highest 4-day average (mg/L as N) inside the 30 days of the chronic criterion. */
    public static double highestFourDays(double ph, double temperatureC) {
        return 2.5 * chronic(ph, temperatureC);
    }

    private static double acutePh(double ph) {
        return 0.0114 / (1 + ten(7.204 - ph)) + 1.6181 / (1 + ten(ph - 7.204));
    }

    private static double chronicPh(double ph) {
        return 0.0278 / (1 + ten(7.688 - ph)) + 1.1994 / (1 + ten(ph - 7.688));
    }

    private static double ten(double power) {
        return StrictMath.pow(10, power);
    }

    private static void check(double ph, double temperatureC) {
        Valid.within("ph", ph, 6.5, 9.0, "");
        Valid.within("temperatureC", temperatureC, 0, 30, "Cel");
    }
}
