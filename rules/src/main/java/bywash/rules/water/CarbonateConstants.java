package bywash.rules.water;

/**
 * Equilibrium constants of carbonic acid and of water, at infinite dilution and 1 atm.
 *
 * <p>Source: L. N. Plummer and E. Busenberg, 1982, The solubilities of calcite, aragonite and vaterite in CO2-H2O solutions,
 * Geochim. Cosmochim. Acta 46:1011-1040, table 1 (K1, K2, KH); F. J. Millero, 1995, Thermodynamics of the carbon dioxide system in
 * the oceans, Geochim. Cosmochim. Acta 59:661-677, eq. 63 at zero salinity (Kw). Range: 0-40 Cel. Accuracy: other published sets
 * lie within 0.002 in pK1 and pK2 and 0.01 in pKw. Activity coefficients are taken as 1, which against the USGS
 * program PHREEQC is up to 8.1 % out in CO2, 6.3 % in a dose of acid or base and 10.7 % in one of bicarbonate, for waters of up
 * to 200 mg/L alkalinity.
 */
final class CarbonateConstants {
    private CarbonateConstants() {}

    static double logK1(double temperatureC) {
        double t = kelvin(temperatureC);
        return -356.3094 - 0.06091964 * t + 21834.37 / t + 126.8339 * StrictMath.log10(t) - 1684915 / (t * t);
    }

    static double logK2(double temperatureC) {
        double t = kelvin(temperatureC);
        return -107.8871 - 0.03252849 * t + 5151.79 / t + 38.92561 * StrictMath.log10(t) - 563713.9 / (t * t);
    }

    /** Henry's constant, mol/(L atm). */
    static double logKh(double temperatureC) {
        double t = kelvin(temperatureC);
        return 108.3865 + 0.01985076 * t - 6919.53 / t - 40.45154 * StrictMath.log10(t) + 669365 / (t * t);
    }

    static double logKw(double temperatureC) {
        double t = kelvin(temperatureC);
        return (148.9652 - 13847.26 / t - 23.6521 * StrictMath.log(t)) / StrictMath.log(10);
    }

    private static double kelvin(double temperatureC) {
        return Kelvin.fromCelsius(Valid.within("temperatureC", temperatureC, 0, 40, "Cel"));
    }
}
