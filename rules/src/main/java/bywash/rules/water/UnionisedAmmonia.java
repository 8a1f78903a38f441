package bywash.rules.water;

/**
 * The un-ionised, toxic share of total ammonia nitrogen in fresh water: pKa = 0.09018 + 2729.92 / T, share = 1 / (1 +
 * 10^(pKa - pH)).
 *
 * <p>Source: K. Emerson, R. C. Russo, R. E. Lund and R. V. Thurston, 1975, Aqueous ammonia equilibrium calculations: effect of pH
 * and temperature, J. Fish. Res. Board Can. 32:2379-2383. Range: 0-40 Cel, pH 4-11, fresh water. Accuracy: within 3 % of
 * independent thermodynamic constants at 5-30 Cel; an error of 0.1 in pH moves the share by about a fifth.
 */
public final class UnionisedAmmonia {
    private UnionisedAmmonia() {}

    /**
     * Acid constant of the ammonium ion.
     *
     * @param temperatureC water temperature (Cel, 0 to 40)
     * @return pKa
     */
    public static double pKa(double temperatureC) {
        Valid.within("temperatureC", temperatureC, 0, 40, "Cel");
        return 0.09018 + 2729.92 / Kelvin.fromCelsius(temperatureC);
    }

    /**
     * Share of total ammonia nitrogen that is un-ionised.
     *
     * @param ph pH of the water (4 to 11)
     * @param temperatureC water temperature (Cel, 0 to 40)
     * @return share (0 to 1)
     */
    public static double share(double ph, double temperatureC) {
        Valid.within("ph", ph, 4, 11, "");
        return 1 / (1 + StrictMath.pow(10, pKa(temperatureC) - ph));
    }

    /**
     * Un-ionised ammonia.
     *
     * @param tanMgL total ammonia nitrogen (mg/L as N, 0 to 1000)
     * @param ph pH of the water (4 to 11)
     * @param temperatureC water temperature (Cel, 0 to 40)
     * @return un-ionised ammonia (mg/L as N)
     */
    public static double unionisedMgL(double tanMgL, double ph, double temperatureC) {
        return Valid.within("tanMgL", tanMgL, 0, 1000, "mg/L") * share(ph, temperatureC);
    }
}
