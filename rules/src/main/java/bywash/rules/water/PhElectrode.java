package bywash.rules.water;

/**
 * The ideal glass electrode: E = -s (pH - 7) with s = ln(10) R T / F.
 *
 * <p>Source: the Nernst equation with CODATA 2018 constants (R 8.314462618 J/(mol K), F 96485.33212 C/mol). Range: 0-60 Cel. Accuracy:
 * exact for an ideal electrode; a real one reaches 95 to 102 % of the slope.
 */
public final class PhElectrode {
    private static final double R = 8.314462618;
    private static final double F = 96485.33212;

    private PhElectrode() {}

    /**
     * Ideal slope.
     *
     * @param temperatureC temperature of the buffer or water (Cel, 0 to 60)
     * @return mV per pH, above zero
     */
    public static double idealSlopeMv(double temperatureC) {
        Valid.within("temperatureC", temperatureC, 0, 60, "Cel");
        return 1000 * StrictMath.log(10) * R * Kelvin.fromCelsius(temperatureC) / F;
    }

    /** Potential (mV) of an ideal electrode at a pH (0 to 14). */
    public static double idealMv(double ph, double temperatureC) {
        return -idealSlopeMv(temperatureC) * (Valid.within("ph", ph, 0, 14, "") - 7);
    }
}
