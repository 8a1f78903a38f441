package bywash.rules.water;

/** The one place where degrees Celsius become kelvin. */
final class Kelvin {
    private static final double ICE_POINT = 273.15;

    private Kelvin() {}

    static double fromCelsius(double temperatureC) {
        return temperatureC + ICE_POINT;
    }
}
