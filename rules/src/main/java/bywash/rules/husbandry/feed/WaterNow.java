package bywash.rules.husbandry.feed;

/**
 * The water as it is, each NaN where not known.
 *
 * @param oxygenMgL lowest of the last day, mg/L
 * @param saturationMgL of oxygen, mg/L
 * @param temperatureC mean of the last day, Cel
 * @param tanMgL latest test of the last two weeks, mg/L as N
 * @param nitriteMgL the same for nitrite, mg/L
 * @param alkalinityMgL the same for alkalinity, mg/L as CaCO3
 * @param volumeL of the loop, L
 */
public record WaterNow(
        double oxygenMgL,
        double saturationMgL,
        double temperatureC,
        double ph,
        double tanMgL,
        double nitriteMgL,
        double alkalinityMgL,
        double volumeL) {}
