package bywash.rules.husbandry.stock;

import bywash.rules.water.Valid;

/**
 * How fish grew from one mean mass to another.
 *
 * <p>Specific growth rate = 100 (ln W2 - ln W1) / days. Thermal-unit growth coefficient = 1000 (W2^(1/3) - W1^(1/3)) / sum of
 * the daily mean temperatures.
 *
 * <p>Source: W. E. Ricker, 1975, Computation and interpretation of biological statistics of fish populations, Bull. Fish. Res.
 * Board Can. 191 (specific growth); G. K. Iwama and A. F. Tautz, 1981, A simple growth model for salmonids in hatcheries, Can. J.
 * Fish. Aquat. Sci. 38:649-656. M. Jobling, 2003, Aquaculture Research 34:581-584, warns: the coefficient holds only where
 * growth rises with temperature, that is below the best temperature of the species.
 *
 * @param fromG mean mass before (g, above 0)
 * @param toG mean mass after (g, above 0)
 * @param days between (d, above 0)
 * @param degreeDays sum of daily mean temperatures (Cel d); NaN where too few days are known
 */
public record Growth(double fromG, double toG, double days, double degreeDays) {
    public Growth {
        Valid.positive("fromG", fromG, 1e6, "g");
        Valid.positive("toG", toG, 1e6, "g");
        Valid.positive("days", days, 100_000, "d");
    }

    /** Specific growth rate, % a day. */
    public double specificPercentPerDay() {
        return 100 * (StrictMath.log(toG) - StrictMath.log(fromG)) / days;
    }

    /** Thermal-unit growth coefficient, g^(1/3) per 1000 Cel d; NaN where the temperatures are not known. */
    public double thermalCoefficient() {
        return degreeDays > 0 ? 1000 * (StrictMath.cbrt(toG) - StrictMath.cbrt(fromG)) / degreeDays : Double.NaN;
    }

    /** Gain, g a fish a day. */
    public double gainGPerDay() {
        return (toG - fromG) / days;
    }

    /** Mean mass (g) that a coefficient gives after a sum of temperatures (Cel d). */
    public static double projectedG(double fromG, double thermalCoefficient, double degreeDays) {
        double root =
                StrictMath.cbrt(Valid.positive("fromG", fromG, 1e6, "g")) + thermalCoefficient * degreeDays / 1000;
        double least = Math.max(0, root);
        return least * least * least;
    }
}
