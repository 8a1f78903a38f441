package bywash.samples.simulation;

/** Something that happens from a minute of the scenario to another, counted from its start. */
public sealed interface Action {
    double atMin();

    double untilMin();

    /** Mains water runs into the sump. */
    record InflowIntoSump(double atMin, double untilMin, double rateLMin, double chlorineMgL) implements Action {}

    /** Rain runs into the sump: no chlorine, next to no minerals. */
    record RainIntoSump(double atMin, double untilMin, double rateLMin) implements Action {}

    /** The sump leaks. */
    record LeakFromSump(double atMin, double untilMin, double rateLMin) implements Action {}

    /** Reserve water runs into the sump, undeclared. */
    record OpenLine(double atMin, double untilMin, double rateLMin) implements Action {}

    /** Mains water runs into the reserve; declared as a batch at its start. */
    record FillReserve(double atMin, double untilMin, double rateLMin, double chlorineMgL) implements Action {}

    /** A declared release from the reserve, which may dribble on after its end. */
    record TopUp(double atMin, double minutes, double rateLMin, double dribbleLMin, double dribbleUntilMin)
            implements Action {
        @Override
        public double untilMin() {
            return StrictMath.max(endMin(), dribbleUntilMin);
        }

        /** When the grower ends it, minutes. */
        public double endMin() {
            return atMin + minutes;
        }
    }

    /** The circulation pump stands. */
    record PumpOff(double atMin, double untilMin) implements Action {}

    /** The sump's level probe sends nothing. */
    record LevelSilent(double atMin, double untilMin) implements Action {}

    /** The sump's level probe repeats one value. */
    record LevelStuck(double atMin, double untilMin) implements Action {}

    /** The grower tests the reserve. */
    record TestReserve(double atMin, double totalChlorineMgL) implements Action {
        @Override
        public double untilMin() {
            return atMin;
        }
    }
}
