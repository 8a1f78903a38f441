package bywash.samples.simulation;

/** Something that happens from a minute of the scenario to another, counted from its start. */
public sealed interface Action {
    /** Which of the family it is, so that a switch over it is complete; each kind is one record. */
    enum Kind {
        INFLOW_INTO_SUMP,
        RAIN_INTO_SUMP,
        LEAK_FROM_SUMP,
        OPEN_LINE,
        FILL_RESERVE,
        TOP_UP,
        PUMP_OFF,
        LEVEL_SILENT,
        LEVEL_STUCK,
        TEST_RESERVE
    }

    Kind kind();

    double atMin();

    double untilMin();

    /** Mains water runs into the sump. */
    record InflowIntoSump(double atMin, double untilMin, double rateLMin, double chlorineMgL) implements Action {
        @Override
        public Kind kind() {
            return Kind.INFLOW_INTO_SUMP;
        }
    }

    /** Rain runs into the sump: no chlorine, next to no minerals. */
    record RainIntoSump(double atMin, double untilMin, double rateLMin) implements Action {
        @Override
        public Kind kind() {
            return Kind.RAIN_INTO_SUMP;
        }
    }

    /** The sump leaks. */
    record LeakFromSump(double atMin, double untilMin, double rateLMin) implements Action {
        @Override
        public Kind kind() {
            return Kind.LEAK_FROM_SUMP;
        }
    }

    /** Reserve water runs into the sump, undeclared. */
    record OpenLine(double atMin, double untilMin, double rateLMin) implements Action {
        @Override
        public Kind kind() {
            return Kind.OPEN_LINE;
        }
    }

    /** Mains water runs into the reserve; declared as a batch at its start. */
    record FillReserve(double atMin, double untilMin, double rateLMin, double chlorineMgL) implements Action {
        @Override
        public Kind kind() {
            return Kind.FILL_RESERVE;
        }
    }

    /** A declared release from the reserve, which may dribble on after its end. */
    record TopUp(double atMin, double minutes, double rateLMin, double dribbleLMin, double dribbleUntilMin)
            implements Action {
        @Override
        public Kind kind() {
            return Kind.TOP_UP;
        }

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
    record PumpOff(double atMin, double untilMin) implements Action {
        @Override
        public Kind kind() {
            return Kind.PUMP_OFF;
        }
    }

    /** The sump's level probe sends nothing. */
    record LevelSilent(double atMin, double untilMin) implements Action {
        @Override
        public Kind kind() {
            return Kind.LEVEL_SILENT;
        }
    }

    /** The sump's level probe repeats one value. */
    record LevelStuck(double atMin, double untilMin) implements Action {
        @Override
        public Kind kind() {
            return Kind.LEVEL_STUCK;
        }
    }

    /** The grower tests the reserve. */
    record TestReserve(double atMin, double totalChlorineMgL) implements Action {
        @Override
        public Kind kind() {
            return Kind.TEST_RESERVE;
        }

        @Override
        public double untilMin() {
            return atMin;
        }
    }
}
