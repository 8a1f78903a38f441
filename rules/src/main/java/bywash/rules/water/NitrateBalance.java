package bywash.rules.water;

/**
 * Where nitrate goes: made from ammonia, taken by plants, carried off by exchanged water.
 *
 * <p>V dN/dt = made - taken - exchange (N - N_in). At rest N = N_in + (made - taken) / exchange.
 *
 * <p>Source: mass balance of a completely mixed reactor. Gas losses in beds are left out, so the balance errs on the high side.
 *
 * @param volumeL volume of the system (L, above 0, at most 10 000 000)
 * @param madeGPerDay nitrate nitrogen made (g/d, 0 to 100 000)
 * @param takenGPerDay nitrate nitrogen taken by plants (g/d, 0 to 100 000)
 * @param exchangeLPerDay water replaced (L/d, 0 to 1 000 000)
 */
public record NitrateBalance(double volumeL, double madeGPerDay, double takenGPerDay, double exchangeLPerDay) {

    /** Refuses values outside the range. */
    public NitrateBalance {
        Valid.positive("volumeL", volumeL, 1e7, "L");
        Valid.within("madeGPerDay", madeGPerDay, 0, 100_000, "g/d");
        Valid.within("takenGPerDay", takenGPerDay, 0, 100_000, "g/d");
        Valid.within("exchangeLPerDay", exchangeLPerDay, 0, 1_000_000, "L/d");
    }

    /** Rise at once (mg/L a day as N) at a nitrate nitrogen (mg/L, 0 to 5000), new water having none; below zero where it falls. */
    public double risePerDayMgL(double nitrateNitrogenMgL) {
        Valid.within("nitrateNitrogenMgL", nitrateNitrogenMgL, 0, 5000, "mg/L");
        return (1000 * (madeGPerDay - takenGPerDay) - exchangeLPerDay * nitrateNitrogenMgL) / volumeL;
    }

    /** Nitrate nitrogen after a time (d, 0 to 10 000), held at zero where plants would take more than there is (mg/L). */
    public double afterMgL(double nitrateNitrogenMgL, double days) {
        double rise = risePerDayMgL(nitrateNitrogenMgL);
        Valid.within("days", days, 0, 10_000, "d");
        double perDay = exchangeLPerDay / volumeL;
        double span = perDay == 0 ? days : -StrictMath.expm1(-perDay * days) / perDay;
        return Math.max(0, nitrateNitrogenMgL + rise * span);
    }

    /** Where the nitrate nitrogen comes to rest (mg/L); infinite where more is made than taken and no water is exchanged. */
    public double atRestMgL() {
        double net = madeGPerDay - takenGPerDay;
        if (net <= 0) {
            return 0;
        }
        return exchangeLPerDay == 0 ? Double.POSITIVE_INFINITY : 1000 * net / exchangeLPerDay;
    }
}
