package bywash.samples.simulation;

/** Something that happens at a minute of the scenario. */
public sealed interface Action {
    double atMin();

    /** Mains water (or rain, without chlorine) runs into the sump. */
    record InflowIntoSump(double atMin, double untilMin, double rateLMin, double chlorineMgL) implements Action {}

    /** Mains water runs into the reserve. */
    record FillReserve(double atMin, double untilMin, double rateLMin) implements Action {}

    /** A declared release from the reserve, which may dribble on after its end. */
    record TopUp(double atMin, double minutes, double rateLMin, double dribbleLMin, double dribbleUntilMin)
            implements Action {}

    /** The circulation pump stands. */
    record PumpOff(double atMin, double untilMin) implements Action {}

    /** The sump's level probe sends nothing. */
    record LevelSilent(double atMin, double untilMin) implements Action {}

    /** The sump's level probe repeats one value. */
    record LevelStuck(double atMin, double untilMin) implements Action {}

    /** The grower tests the reserve. */
    record TestReserve(double atMin, double totalChlorineMgL) implements Action {}
}
