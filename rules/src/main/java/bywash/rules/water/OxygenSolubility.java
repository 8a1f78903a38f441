package bywash.rules.water;

/**
 * Dissolved oxygen at equilibrium with water-saturated air: C = C0 Fs Fp.
 *
 * <p>C0 is fresh water at 1 atm, Fs the factor for salinity, Fp the factor for barometric pressure.
 *
 * <p>Source: B. B. Benson and D. Krause, 1984, The concentration and isotopic fractionation of oxygen dissolved in freshwater
 * and seawater in equilibrium with the atmosphere, Limnol. Oceanogr. 29:620-632, eqs. 22, 24, 31 and 32, in the form of USGS
 * Office of Water Quality Technical Memorandum 2011.03. Range: 0-40 Cel, 0-40 g/kg, 0.5-1.1 atm. Accuracy: within 0.1 % of the
 * TEOS-10 library's fit to the same measurements.
 */
public final class OxygenSolubility {
    private OxygenSolubility() {}

    /**
     * Saturation concentration.
     *
     * @param temperatureC water temperature (Cel, 0 to 40)
     * @param salinityGKg salinity (g/kg, 0 to 40)
     * @param pressureAtm barometric pressure at the water, not reduced to sea level (atm, 0.5 to 1.1)
     * @return dissolved oxygen at saturation (mg/L)
     */
    public static double saturationMgL(double temperatureC, double salinityGKg, double pressureAtm) {
        return freshMgL(temperatureC)
                * salinityFactor(temperatureC, salinityGKg)
                * pressureFactor(temperatureC, pressureAtm);
    }

    /** Share of saturation (%) of a measured concentration (mg/L, 0 to 60); other parameters as for saturation. */
    public static double percent(double oxygenMgL, double temperatureC, double salinityGKg, double pressureAtm) {
        Valid.within("oxygenMgL", oxygenMgL, 0, 60, "mg/L");
        return 100 * oxygenMgL / saturationMgL(temperatureC, salinityGKg, pressureAtm);
    }

    /** Concentration (mg/L) of a measured share of saturation (%, 0 to 400); other parameters as for saturation. */
    public static double concentrationMgL(double percent, double temperatureC, double salinityGKg, double pressureAtm) {
        Valid.within("oxygenPercent", percent, 0, 400, "%");
        return percent / 100 * saturationMgL(temperatureC, salinityGKg, pressureAtm);
    }

    /** What is missing to saturation (mg/L), below zero where the water is supersaturated. */
    public static double deficitMgL(double oxygenMgL, double temperatureC, double salinityGKg, double pressureAtm) {
        Valid.within("oxygenMgL", oxygenMgL, 0, 60, "mg/L");
        return saturationMgL(temperatureC, salinityGKg, pressureAtm) - oxygenMgL;
    }

    /** Fresh water at 1 atm (mg/L), eq. 32. */
    static double freshMgL(double temperatureC) {
        Valid.within("temperatureC", temperatureC, 0, 40, "Cel");
        double t = Kelvin.fromCelsius(temperatureC);
        double lnC = -139.34411
                + 1.575701e5 / t
                - 6.642308e7 / (t * t)
                + 1.243800e10 / (t * t * t)
                - 8.621949e11 / (t * t * t * t);
        return StrictMath.exp(lnC);
    }

    /** Factor for dissolved salts, 1 in fresh water. */
    static double salinityFactor(double temperatureC, double salinityGKg) {
        Valid.within("salinityGKg", salinityGKg, 0, 40, "g/kg");
        double t = Kelvin.fromCelsius(temperatureC);
        return StrictMath.exp(-salinityGKg * (0.017674 - 10.754 / t + 2140.7 / (t * t)));
    }

    /** Factor for barometric pressure, 1 at 1 atm, eqs. 22 and 24. */
    static double pressureFactor(double temperatureC, double pressureAtm) {
        Valid.within("pressureAtm", pressureAtm, 0.5, 1.1, "atm");
        double t = Kelvin.fromCelsius(temperatureC);
        double u = StrictMath.exp(11.8571 - 3840.70 / t - 216961 / (t * t));
        double theta = 0.000975 - 1.426e-5 * temperatureC + 6.436e-8 * temperatureC * temperatureC;
        return (pressureAtm - u) * (1 - theta * pressureAtm) / ((1 - u) * (1 - theta));
    }
}
