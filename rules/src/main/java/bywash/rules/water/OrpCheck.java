package bywash.rules.water;

/**
 * Solutions of known redox potential, to check an ORP probe.
 *
 * <p>Source: APHA, Standard Methods 2580, table I: ZoBell's solution, 428 mV at 25 Cel falling 2.2 mV per Cel (1-30 Cel, the line
 * within 0.5 mV of the table); Light's solution, 675 mV at 25 Cel, both against the standard hydrogen electrode. A probe
 * within 10 mV passes.
 */
public final class OrpCheck {
    /** Light's solution at 25 Cel on the hydrogen scale (mV). */
    public static final double LIGHT_25_MV = 675;

    /** Largest miss of a probe that passes (mV). */
    public static final double PASS_MV = 10;

    private OrpCheck() {}

    /** ZoBell's solution on the hydrogen scale at a temperature (Cel, 1 to 30), mV. */
    public static double zobellMv(double temperatureC) {
        return 428 - 2.2 * (Valid.within("temperatureC", temperatureC, 1, 30, "Cel") - 25);
    }

    /** Potential of silver chloride in chloride of unit activity (Cel, 0 to 50), mV. Source: R. G. Bates and J. B. Macaskill, 1978. */
    public static double silverChlorideStandardMv(double temperatureC) {
        double t = Valid.within("temperatureC", temperatureC, 0, 50, "Cel");
        return 1000 * (0.23695 - 4.8564e-4 * t - 3.4205e-6 * t * t - 5.869e-9 * t * t * t);
    }
}
