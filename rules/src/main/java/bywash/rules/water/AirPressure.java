package bywash.rules.water;

/**
 * Barometric pressure, from elevation or from a reading.
 *
 * <p>Source: ICAO, 1993, Manual of the ICAO Standard Atmosphere, Doc 7488, troposphere: P/P0 = (1 - 0.0065 h / 288.15)^5.25588.
 * The weather moves the true pressure about 3 % either way, which moves oxygen saturation as much; a barometer reading of
 * station pressure (not reduced to sea level) is better where there is one.
 */
public final class AirPressure {
    private static final double LAPSE_K_PER_M = 0.0065;
    private static final double SEA_LEVEL_K = 288.15;
    private static final double EXPONENT = 5.25588;
    private static final double HPA_PER_ATM = 1013.25;

    private AirPressure() {}

    /**
     * Standard pressure at an elevation.
     *
     * @param elevationM elevation above sea level (m, -430 to 5000)
     * @return pressure (atm)
     */
    public static double atmAtElevation(double elevationM) {
        Valid.within("elevationM", elevationM, -430, 5000, "m");
        return StrictMath.pow(1 - LAPSE_K_PER_M * elevationM / SEA_LEVEL_K, EXPONENT);
    }

    /**
     * A barometer's station pressure in atmospheres.
     *
     * @param pressureHpa pressure (hPa, 500 to 1100)
     * @return pressure (atm)
     */
    public static double atmFromHpa(double pressureHpa) {
        return Valid.within("pressureHpa", pressureHpa, 500, 1100, "hPa") / HPA_PER_ATM;
    }
}
