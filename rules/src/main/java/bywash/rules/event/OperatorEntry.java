package bywash.rules.event;

import bywash.rules.site.Stocking;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the grower enters. The words of {@link #word()} stand in recordings. */
public sealed interface OperatorEntry {
    Instant at();

    /** The entry's word in recordings, such as {@code top-up-start}. */
    String word();

    /** @param source a reserve's id, or {@code mains} */
    record TopUpStart(Instant at, String vessel, String source, double volumeL, Duration duration)
            implements OperatorEntry {
        @Override
        public String word() {
            return "top-up-start";
        }
    }

    record TopUpEnd(Instant at, String vessel) implements OperatorEntry {
        @Override
        public String word() {
            return "top-up-end";
        }
    }

    record BatchFill(Instant at, String vessel, double volumeL) implements OperatorEntry {
        @Override
        public String word() {
            return "batch-fill";
        }
    }

    /** @param treatment standing, aerated, sunlit, carbon, thiosulfate or ascorbic-acid; @param amountG NaN where none */
    record BatchTreat(Instant at, String vessel, String treatment, double amountG) implements OperatorEntry {
        @Override
        public String word() {
            return "batch-treat";
        }
    }

    /** A manual test; {@code quantity} as in design (total-chlorine, nitrite ...), value in mg/L, or the probe's unit. */
    record WaterTest(Instant at, String vessel, String quantity, double value) implements OperatorEntry {
        @Override
        public String word() {
            return "test";
        }
    }

    record StockingChange(Instant at, Stocking stocking) implements OperatorEntry {
        @Override
        public String word() {
            return "stocking";
        }
    }

    /** @param proteinFraction 0 to 1; NaN where not given */
    record Feed(Instant at, double massG, double proteinFraction) implements OperatorEntry {
        @Override
        public String word() {
            return "feed";
        }
    }

    record FishIn(Instant at, String cohort, String species, int count, double meanMassG) implements OperatorEntry {
        @Override
        public String word() {
            return "fish-in";
        }
    }

    record Harvest(Instant at, String cohort, int count, List<Double> massesG) implements OperatorEntry {
        public Harvest {
            massesG = List.copyOf(massesG);
        }

        @Override
        public String word() {
            return "harvest";
        }
    }

    record Calibrate(Instant at, String probe, String detail) implements OperatorEntry {
        @Override
        public String word() {
            return "calibrate";
        }
    }

    /** Acknowledges one alarm, or all where {@code alarm} is null. */
    record Acknowledge(
            Instant at, @Nullable String alarm, @Nullable String subject) implements OperatorEntry {
        @Override
        public String word() {
            return "acknowledge";
        }
    }

    record Shelve(Instant at, String alarm, String subject, Duration duration) implements OperatorEntry {
        @Override
        public String word() {
            return "shelve";
        }
    }

    record Unshelve(Instant at, String alarm, String subject) implements OperatorEntry {
        @Override
        public String word() {
            return "unshelve";
        }
    }

    record Note(Instant at, String text) implements OperatorEntry {
        @Override
        public String word() {
            return "note";
        }
    }
}
