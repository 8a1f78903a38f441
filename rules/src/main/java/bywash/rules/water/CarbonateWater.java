package bywash.rules.water;

import static bywash.rules.water.AtomicWeight.CACO3_EQ;
import static bywash.rules.water.AtomicWeight.CO2;

/**
 * A water whose alkalinity is carbonate: any two of pH, alkalinity and carbon dioxide give the third.
 *
 * <p>Alk = CO2 (K1/h + 2 K1 K2/h^2) + Kw/h - h, with h = 10^-pH; constants and accuracy in {@link CarbonateConstants}.
 *
 * <p>Source: W. Stumm and J. J. Morgan, 1996, Aquatic Chemistry, 3rd ed., ch. 4 (alkalinity as charge balance). Range: 0-40 Cel, pH
 * 4-11, alkalinity 0-1000 mg/L as CaCO3. Phosphate, borate, ammonia and organic acids are left out; they matter where they
 * exceed a few percent of the alkalinity.
 *
 * @param temperatureC water temperature (Cel, 0 to 40)
 * @param ph pH (4 to 11)
 * @param totalCarbonMmolL total inorganic carbon (mmol/L, 0 or more)
 */
public record CarbonateWater(double temperatureC, double ph, double totalCarbonMmolL) {
    private static final double LEAST_PH = 4;
    private static final double MOST_PH = 11;
    private static final int HALVINGS = 60;

    /** Refuses values outside the range. */
    public CarbonateWater {
        Valid.within("temperatureC", temperatureC, 0, 40, "Cel");
        Valid.within("ph", ph, LEAST_PH, MOST_PH, "");
        Valid.within("totalCarbonMmolL", totalCarbonMmolL, 0, 1e4, "mmol/L");
    }

    /** The water with this pH and alkalinity (mg/L as CaCO3, 0 to 1000). */
    public static CarbonateWater ofAlkalinity(double temperatureC, double ph, double alkalinityMgL) {
        Valid.within("alkalinityMgL", alkalinityMgL, 0, 1000, "mg/L as CaCO3");
        Valid.within("ph", ph, LEAST_PH, MOST_PH, "");
        double carbonate = alkalinityMgL / CACO3_EQ - waterEq(temperatureC, ph);
        if (carbonate < 0) {
            throw new IllegalArgumentException("alkalinityMgL is " + alkalinityMgL + "; at pH " + ph
                    + " water alone has more, so it must be at least " + waterEq(temperatureC, ph) * CACO3_EQ
                    + " mg/L as CaCO3");
        }
        return new CarbonateWater(temperatureC, ph, carbonate / charge(temperatureC, ph));
    }

    /** The water with this alkalinity (mg/L as CaCO3, above 0) and carbon dioxide (mg/L as CO2, above 0, at most 1000). */
    public static CarbonateWater ofCo2(double temperatureC, double alkalinityMgL, double co2MgL) {
        Valid.positive("alkalinityMgL", alkalinityMgL, 1000, "mg/L as CaCO3");
        Valid.positive("co2MgL", co2MgL, 1000, "mg/L");
        double target = alkalinityMgL / CACO3_EQ;
        double co2 = co2MgL / CO2;
        double low = LEAST_PH;
        double high = MOST_PH;
        if (openEq(temperatureC, low, co2) > target || openEq(temperatureC, high, co2) < target) {
            throw new IllegalArgumentException(
                    "co2MgL is " + co2MgL + "; with this alkalinity the pH would not be from 4 to 11");
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (openEq(temperatureC, middle, co2) < target) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double ph = (low + high) / 2;
        return new CarbonateWater(temperatureC, ph, co2 / co2Share(temperatureC, ph));
    }

    /** The water with this alkalinity (mg/L as CaCO3, above 0) at rest with air of a carbon dioxide content (ppm, 100 to 100 000). */
    public static CarbonateWater openToAir(double temperatureC, double alkalinityMgL, double airPpm) {
        Valid.within("airPpm", airPpm, 100, 100_000, "ppm");
        double molL = StrictMath.pow(10, CarbonateConstants.logKh(temperatureC)) * airPpm * 1e-6;
        return ofCo2(temperatureC, alkalinityMgL, molL * 1000 * CO2);
    }

    /** Alkalinity (meq/L). */
    public double alkalinityMeqL() {
        return totalCarbonMmolL * charge(temperatureC, ph) + waterEq(temperatureC, ph);
    }

    /** Alkalinity (mg/L as CaCO3). */
    public double alkalinityMgL() {
        return alkalinityMeqL() * CACO3_EQ;
    }

    /** Dissolved carbon dioxide (mg/L as CO2). */
    public double co2MgL() {
        return totalCarbonMmolL * co2Share(temperatureC, ph) * CO2;
    }

    /** Negative charge that one mole of inorganic carbon carries at a pH (0 to 2). */
    static double charge(double temperatureC, double ph) {
        double a = StrictMath.pow(10, CarbonateConstants.logK1(temperatureC) + ph);
        double b = a * StrictMath.pow(10, CarbonateConstants.logK2(temperatureC) + ph);
        return (a + 2 * b) / (1 + a + b);
    }

    /** Alkalinity of water itself, OH- less H+ (meq/L). */
    static double waterEq(double temperatureC, double ph) {
        return 1000 * (StrictMath.pow(10, CarbonateConstants.logKw(temperatureC) + ph) - StrictMath.pow(10, -ph));
    }

    /** Share of inorganic carbon that is carbon dioxide at a pH (0 to 1). */
    static double co2Share(double temperatureC, double ph) {
        double a = StrictMath.pow(10, CarbonateConstants.logK1(temperatureC) + ph);
        return 1 / (1 + a + a * StrictMath.pow(10, CarbonateConstants.logK2(temperatureC) + ph));
    }

    private static double openEq(double temperatureC, double ph, double co2MmolL) {
        return co2MmolL / co2Share(temperatureC, ph) * charge(temperatureC, ph) + waterEq(temperatureC, ph);
    }
}
