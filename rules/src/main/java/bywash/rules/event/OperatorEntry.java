package bywash.rules.event;

import bywash.rules.site.Stocking;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the grower enters. The words of {@link #word()} stand in recordings; switch over {@link #kind()}. */
public sealed interface OperatorEntry {
    Instant at();

    /** Which of the family it is; each kind is one record. */
    EntryKind kind();

    /** The entry's word in recordings, such as {@code top-up-start}. */
    default String word() {
        return kind().word();
    }

    /** @param source a reserve's id, or {@code mains} */
    record TopUpStart(Instant at, String vessel, String source, double volumeL, Duration duration)
            implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.TOP_UP_START;
        }
    }

    record TopUpEnd(Instant at, String vessel) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.TOP_UP_END;
        }
    }

    record BatchFill(Instant at, String vessel, double volumeL) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.BATCH_FILL;
        }
    }

    /**
     * Something done to a reserve against chlorine.
     *
     * @param treatment standing, aerated, sunlit, carbon, thiosulfate or ascorbic-acid
     * @param amountG of the product, g; NaN where none
     * @param strengthPercent pure chemical in it by weight, from its label (%, above 0, at most 100); NaN where none or not read: 100
     */
    record BatchTreat(Instant at, String vessel, String treatment, double amountG, double strengthPercent)
            implements OperatorEntry {
        public BatchTreat(Instant at, String vessel, String treatment, double amountG) {
            this(at, vessel, treatment, amountG, Double.NaN);
        }

        /** Pure chemical, g; NaN where none. */
        public double pureG() {
            return Double.isNaN(strengthPercent) ? amountG : amountG * strengthPercent / 100;
        }

        @Override
        public EntryKind kind() {
            return EntryKind.BATCH_TREAT;
        }
    }

    /** A manual test; {@code quantity} as in design (total-chlorine, nitrite ...), value in mg/L, or the probe's unit. */
    record WaterTest(Instant at, String vessel, String quantity, double value) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.TEST;
        }
    }

    /** @param species that is there, or is to be brought back; null where not said */
    record StockingChange(
            Instant at, Stocking stocking, @Nullable String species) implements OperatorEntry {
        public StockingChange(Instant at, Stocking stocking) {
            this(at, stocking, null);
        }

        @Override
        public EntryKind kind() {
            return EntryKind.STOCKING;
        }
    }

    /**
     * Feed given, to fish or, without fish, to the bacteria.
     *
     * @param massG feed as weighed, g
     * @param proteinFraction 0 to 1; NaN where not given
     * @param cohort who got it; null: shared out by weight among all
     * @param appetite how it was taken; null where not said
     */
    record Feed(
            Instant at,
            double massG,
            double proteinFraction,
            @Nullable String cohort,
            @Nullable Appetite appetite) implements OperatorEntry {
        public Feed(Instant at, double massG, double proteinFraction) {
            this(at, massG, proteinFraction, null, null);
        }

        @Override
        public EntryKind kind() {
            return EntryKind.FEED;
        }
    }

    /**
     * A cohort comes in, or more of one that is there.
     *
     * @param meanMassG mean mass of one fish, g
     * @param vessel where it lives; null: the first fish tank of the site
     */
    record FishIn(
            Instant at,
            String cohort,
            String species,
            int count,
            double meanMassG,
            @Nullable String vessel) implements OperatorEntry {
        public FishIn(Instant at, String cohort, String species, int count, double meanMassG) {
            this(at, cohort, species, count, meanMassG, null);
        }

        @Override
        public EntryKind kind() {
            return EntryKind.FISH_IN;
        }
    }

    /**
     * Fish taken out to eat or to sell.
     *
     * @param massesG of the fish weighed one by one, g; may be empty
     * @param totalG of all of them, g; NaN: the sum of the masses, where each was weighed
     */
    record Harvest(Instant at, String cohort, int count, List<Double> massesG, double totalG) implements OperatorEntry {
        public Harvest {
            massesG = List.copyOf(massesG);
        }

        public Harvest(Instant at, String cohort, int count, List<Double> massesG) {
            this(at, cohort, count, massesG, Double.NaN);
        }

        @Override
        public EntryKind kind() {
            return EntryKind.HARVEST;
        }
    }

    /**
     * A probe held into standards. What it showed there, before it was adjusted, says how far it had drifted.
     *
     * @param detail in words; may be empty where there are points
     * @param points standard and reading, in the order taken
     * @param temperatureC of the standards; NaN where not given
     */
    record Calibrate(Instant at, String probe, String detail, List<CalibrationPoint> points, double temperatureC)
            implements OperatorEntry {
        public Calibrate {
            points = List.copyOf(points);
        }

        public Calibrate(Instant at, String probe, String detail) {
            this(at, probe, detail, List.of(), Double.NaN);
        }

        @Override
        public EntryKind kind() {
            return EntryKind.CALIBRATE;
        }
    }

    /**
     * Fish on the scales.
     *
     * @param all whether every fish of the cohort was weighed; else a sample
     * @param count how many were weighed
     * @param totalG of those, g
     * @param massesG one by one where they were, g; else empty
     */
    record Weigh(Instant at, String cohort, boolean all, int count, double totalG, List<Double> massesG)
            implements OperatorEntry {
        public Weigh {
            massesG = List.copyOf(massesG);
        }

        @Override
        public EntryKind kind() {
            return EntryKind.WEIGH;
        }
    }

    /** @param cause in words; null where not known */
    record FishLoss(
            Instant at, String cohort, int count, @Nullable String cause) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.FISH_LOSS;
        }
    }

    /**
     * Fish go to another vessel of the site, or away alive.
     *
     * @param vessel where they go; {@code away} for off the site
     * @param into the cohort they become or join; null: the cohort stays itself, which only all of it can
     */
    record FishMove(
            Instant at,
            String cohort,
            int count,
            String vessel,
            @Nullable String into) implements OperatorEntry {
        /** The place of fish that leave the site alive. */
        public static final String AWAY = "away";

        @Override
        public EntryKind kind() {
            return EntryKind.FISH_MOVE;
        }
    }

    /** @param areaM2 planted, m2 */
    record Plant(Instant at, String vessel, String crop, double areaM2) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.PLANT;
        }
    }

    /**
     * Plants taken from a bed.
     *
     * @param massG fresh, g
     * @param clearedM2 area left bare, m2; 0 where the plants go on
     */
    record CropHarvest(Instant at, String vessel, String crop, double massG, double clearedM2)
            implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.CROP_HARVEST;
        }
    }

    /** A bed is taken out of the loop, or put back. */
    record BedState(Instant at, String vessel, boolean on) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.BED;
        }
    }

    /**
     * A chemical added to the water: an acid, a base, ammonia for the bacteria, a dechlorinator.
     *
     * @param massG of the product, g
     * @param strengthPercent pure chemical in it by weight, from its label (%, above 0, at most 100); NaN: as it is usually sold
     */
    record Dose(Instant at, String vessel, String reagent, double massG, double strengthPercent)
            implements OperatorEntry {
        public Dose(Instant at, String vessel, String reagent, double massG) {
            this(at, vessel, reagent, massG, Double.NaN);
        }

        @Override
        public EntryKind kind() {
            return EntryKind.DOSE;
        }
    }

    /**
     * The pH that the grower wants and by what means; it stands until it is reached or another takes its place.
     *
     * @param reagent an acid or a base by its label, or {@link #NITRIFICATION}
     * @param strengthPercent of the product, from its label; 100 where the bacteria do it
     */
    record PhAim(Instant at, double targetPh, String reagent, double strengthPercent) implements OperatorEntry {
        /** Wait for the bacteria to use up the alkalinity. */
        public static final String NITRIFICATION = "nitrification";

        @Override
        public EntryKind kind() {
            return EntryKind.PH_PLAN;
        }
    }

    /** @param care in words: cleaned, new membrane, new electrolyte, replaced */
    record ProbeCare(Instant at, String probe, String care) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.PROBE_CARE;
        }
    }

    /** Acknowledges one alarm, or all where {@code alarm} is null. */
    record Acknowledge(
            Instant at, @Nullable String alarm, @Nullable String subject) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.ACKNOWLEDGE;
        }
    }

    record Shelve(Instant at, String alarm, String subject, Duration duration) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.SHELVE;
        }
    }

    record Unshelve(Instant at, String alarm, String subject) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.UNSHELVE;
        }
    }

    /**
     * Somebody is at a probe, or has switched a pump off: what it then says is no alarm.
     *
     * @param subject a probe's id, or a vessel's id for its pump
     * @param duration until it counts again at the latest; more than 24 h is taken as that
     */
    record MaintenanceStart(Instant at, String subject, Duration duration, String detail) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.MAINTENANCE_START;
        }
    }

    record MaintenanceEnd(Instant at, String subject) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.MAINTENANCE_END;
        }
    }

    /** An alarm that cannot work for now: out of service until it is returned, and shown as such. */
    record OutOfService(Instant at, String alarm, String subject, String detail) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.OUT_OF_SERVICE;
        }
    }

    record ReturnToService(Instant at, String alarm, String subject) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.RETURN_TO_SERVICE;
        }
    }

    record Note(Instant at, String text) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.NOTE;
        }
    }

    /**
     * A step of an incident's response sheet is done.
     *
     * @param step the step's word, such as {@code stop-water}
     * @param note empty for none
     */
    record StepDone(Instant at, String incident, String step, String note) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.STEP_DONE;
        }
    }

    /**
     * Takes back an entry that was a mistake: both stay on record, and the earlier one counts no more.
     *
     * @param of the word of the entry that is taken back
     * @param entered its own time
     * @param which of several of that word and time, from 1 in the order they were entered
     * @param why in words; empty where not said
     */
    record Withdraw(Instant at, String of, Instant entered, int which, String why) implements OperatorEntry {
        @Override
        public EntryKind kind() {
            return EntryKind.WITHDRAW;
        }
    }
}
