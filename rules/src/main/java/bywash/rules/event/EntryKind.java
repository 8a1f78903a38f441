package bywash.rules.event;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The closed family of operator entries. A switch over it names every kind: one that is new does not compile until each of
 * them says what becomes of it.
 */
public enum EntryKind {
    TOP_UP_START("top-up-start", OperatorEntry.TopUpStart.class),
    TOP_UP_END("top-up-end", OperatorEntry.TopUpEnd.class),
    BATCH_FILL("batch-fill", OperatorEntry.BatchFill.class),
    BATCH_TREAT("batch-treat", OperatorEntry.BatchTreat.class),
    TEST("test", OperatorEntry.WaterTest.class),
    STOCKING("stocking", OperatorEntry.StockingChange.class),
    FEED("feed", OperatorEntry.Feed.class),
    FISH_IN("fish-in", OperatorEntry.FishIn.class),
    HARVEST("harvest", OperatorEntry.Harvest.class),
    WEIGH("weigh", OperatorEntry.Weigh.class),
    FISH_LOSS("fish-loss", OperatorEntry.FishLoss.class),
    FISH_MOVE("fish-move", OperatorEntry.FishMove.class),
    PLANT("plant", OperatorEntry.Plant.class),
    CROP_HARVEST("crop-harvest", OperatorEntry.CropHarvest.class),
    BED("bed", OperatorEntry.BedState.class),
    DOSE("dose", OperatorEntry.Dose.class),
    CALIBRATE("calibrate", OperatorEntry.Calibrate.class),
    PH_PLAN("ph-plan", OperatorEntry.PhAim.class),
    PROBE_CARE("probe-care", OperatorEntry.ProbeCare.class),
    ACKNOWLEDGE("acknowledge", OperatorEntry.Acknowledge.class),
    SHELVE("shelve", OperatorEntry.Shelve.class),
    UNSHELVE("unshelve", OperatorEntry.Unshelve.class),
    MAINTENANCE_START("maintenance-start", OperatorEntry.MaintenanceStart.class),
    MAINTENANCE_END("maintenance-end", OperatorEntry.MaintenanceEnd.class),
    OUT_OF_SERVICE("out-of-service", OperatorEntry.OutOfService.class),
    RETURN_TO_SERVICE("return-to-service", OperatorEntry.ReturnToService.class),
    NOTE("note", OperatorEntry.Note.class),
    STEP_DONE("step-done", OperatorEntry.StepDone.class),
    WITHDRAW("withdraw", OperatorEntry.Withdraw.class);

    private final String word;
    private final Class<? extends OperatorEntry> type;

    EntryKind(String word, Class<? extends OperatorEntry> type) {
        this.word = word;
        this.type = type;
    }

    /** Its word in recordings, such as {@code top-up-start}. */
    public String word() {
        return word;
    }

    /** The record of this kind, and of no other. */
    public Class<? extends OperatorEntry> type() {
        return type;
    }

    /** The kind of a word; null where none is called so. */
    public static @Nullable EntryKind of(String word) {
        for (EntryKind kind : values()) {
            if (kind.word.equals(word)) {
                return kind;
            }
        }
        return null;
    }

    /** All words, with commas between. */
    public static String words() {
        return Arrays.stream(values()).map(EntryKind::word).collect(Collectors.joining(", "));
    }
}
