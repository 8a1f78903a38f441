package bywash.rules.chlorine;

import java.time.Instant;
import java.util.Objects;

/** Something that changed what is dissolved in the system, at its own time. The balance is a fold over these. */
public sealed interface BalanceStep {
    /** Which of the family it is; each kind is one record. */
    enum Kind {
        CAME,
        TESTED,
        DOSED
    }

    Kind kind();

    Instant at();

    /**
     * An inflow, at its end.
     *
     * @param systemL what the system held then
     * @param spilling whether a vessel ran over
     */
    record Came(Inflow inflow, Litres systemL, boolean spilling) implements BalanceStep {
        public Came {
            Objects.requireNonNull(inflow, "inflow");
            Objects.requireNonNull(systemL, "systemL");
        }

        @Override
        public Kind kind() {
            return Kind.CAME;
        }

        @Override
        public Instant at() {
            return inflow.until();
        }
    }

    /** A test of total chlorine, mg/L, and its error. */
    record Tested(Instant at, double totalMgL, double errorMgL) implements BalanceStep {
        public Tested {
            Objects.requireNonNull(at, "at");
        }

        @Override
        public Kind kind() {
            return Kind.TESTED;
        }
    }

    /**
     * A dechlorinator went in.
     *
     * @param removesMg what it can remove, mg as Cl2
     * @param systemL what the system held then
     */
    record Dosed(Instant at, double removesMg, Litres systemL) implements BalanceStep {
        public Dosed {
            Objects.requireNonNull(at, "at");
            Objects.requireNonNull(systemL, "systemL");
        }

        @Override
        public Kind kind() {
            return Kind.DOSED;
        }
    }
}
