package bywash.rules.water;

/**
 * First-order loss: C = C0 e^(-k t), and the time until a residual has fallen below a limit.
 *
 * <p>Source: the integrated first-order rate law. Real loss slows as the easily oxidised matter is used up, so a rate from the
 * first hours foretells the last hours badly; test again before trusting the end.
 */
public final class FirstOrderLoss {
    private FirstOrderLoss() {}

    /**
     * When a residual will have fallen to a limit.
     *
     * @param earliestH with the high rate (h)
     * @param likelyH with the likely rate (h)
     * @param latestH with the low rate (h; infinite where the low rate is zero)
     */
    public record Wait(double earliestH, double likelyH, double latestH) {}

    /**
     * Residual after a time.
     *
     * @param residualMgL residual at the start (mg/L, 0 to 20)
     * @param ratePerHour rate of loss (1/h, 0 to 1000)
     * @param hours time (h, 0 to 10000)
     * @return residual (mg/L)
     */
    public static double after(double residualMgL, double ratePerHour, double hours) {
        Valid.within("residualMgL", residualMgL, 0, 20, "mg/L");
        Valid.within("ratePerHour", ratePerHour, 0, 1000, "1/h");
        Valid.within("hours", hours, 0, 10_000, "h");
        return residualMgL * StrictMath.exp(-ratePerHour * hours);
    }

    /**
     * Time until the residual is at the limit, 0 where it already is.
     *
     * @param residualMgL residual now (mg/L, 0 to 20)
     * @param limitMgL limit (mg/L, above 0, at most 20)
     * @param rate rate of loss with its range
     * @return earliest, likely and latest time (h)
     */
    public static Wait until(double residualMgL, double limitMgL, LossRate rate) {
        Valid.within("residualMgL", residualMgL, 0, 20, "mg/L");
        Valid.positive("limitMgL", limitMgL, 20, "mg/L");
        double folds = residualMgL <= limitMgL ? 0 : StrictMath.log(residualMgL / limitMgL);
        return new Wait(
                hours(folds, rate.highPerHour()), hours(folds, rate.likelyPerHour()), hours(folds, rate.lowPerHour()));
    }

    private static double hours(double folds, double perHour) {
        if (folds == 0) {
            return 0;
        }
        return perHour == 0 ? Double.POSITIVE_INFINITY : folds / perHour;
    }
}
