package bywash.ingest.recording;

import bywash.ingest.site.Dimension;
import bywash.rules.chlorine.Treatment;
import bywash.rules.event.EntryKind;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Stocking;
import java.time.Instant;
import java.util.Map;

/** Makes one operator entry of the fields of a JSON object. */
final class EntryReader {
    private static final double MOST_L = 1e7;
    private static final double MOST_G = 1e9;

    private EntryReader() {}

    static OperatorEntry read(Instant at, String word, Map<String, Object> fields) throws BrokenEntry {
        EntryKind kind = EntryKind.of(word);
        if (kind == null) {
            throw new BrokenEntry("operator entry \"" + JsonLines.shown(word) + "\" is not known", EntryKind.words());
        }
        EntryFields f = new EntryFields(word, fields);
        return switch (kind) {
            case TOP_UP_START -> topUpStart(at, f);
            case TOP_UP_END -> new OperatorEntry.TopUpEnd(at, f.text("vessel"));
            case BATCH_FILL ->
                new OperatorEntry.BatchFill(at, f.text("vessel"), f.measure("volume", Dimension.VOLUME, 0, MOST_L));
            case BATCH_TREAT ->
                new OperatorEntry.BatchTreat(
                        at,
                        f.text("vessel"),
                        treatment(f),
                        f.measureOrNone("amount", Dimension.MASS, MOST_G),
                        StrengthField.of(f, "batch-treat"));
            case TEST -> test(at, f);
            case STOCKING ->
                new OperatorEntry.StockingChange(at, stocking(f.text("stocking")), f.textOrNull("species"));
            case FEED -> StockEntries.feed(at, f);
            case FISH_IN -> StockEntries.fishIn(at, f);
            case HARVEST -> StockEntries.harvest(at, f);
            case WEIGH -> StockEntries.weigh(at, f);
            case FISH_LOSS -> StockEntries.fishLoss(at, f);
            case FISH_MOVE -> StockEntries.fishMove(at, f);
            case PLANT -> BedEntries.plant(at, f);
            case CROP_HARVEST -> BedEntries.cropHarvest(at, f);
            case BED -> BedEntries.bed(at, f);
            case DOSE -> BedEntries.dose(at, f);
            case CALIBRATE -> ProbeEntries.calibrate(at, f);
            case PH_PLAN -> BedEntries.phAim(at, f);
            case PROBE_CARE -> new OperatorEntry.ProbeCare(at, f.text("probe"), f.text("care"));
            case ACKNOWLEDGE -> new OperatorEntry.Acknowledge(at, f.textOrNull("alarm"), f.textOrNull("subject"));
            case SHELVE -> new OperatorEntry.Shelve(at, f.text("alarm"), f.text("subject"), f.duration("duration"));
            case UNSHELVE -> new OperatorEntry.Unshelve(at, f.text("alarm"), f.text("subject"));
            case MAINTENANCE_START -> AlarmEntries.maintenanceStart(at, f);
            case MAINTENANCE_END -> new OperatorEntry.MaintenanceEnd(at, f.text("subject"));
            case OUT_OF_SERVICE -> AlarmEntries.outOfService(at, f);
            case RETURN_TO_SERVICE -> new OperatorEntry.ReturnToService(at, f.text("alarm"), f.text("subject"));
            case NOTE -> new OperatorEntry.Note(at, f.text("text"));
            case STEP_DONE -> {
                String note = f.textOrNull("note");
                yield new OperatorEntry.StepDone(at, f.text("incident"), f.text("step"), note == null ? "" : note);
            }
            case WITHDRAW -> WithdrawEntry.read(at, f);
        };
    }

    private static OperatorEntry topUpStart(Instant at, EntryFields f) throws BrokenEntry {
        return new OperatorEntry.TopUpStart(
                at,
                f.text("vessel"),
                f.text("source"),
                f.measure("volume", Dimension.VOLUME, 0, MOST_L),
                f.duration("duration"));
    }

    private static OperatorEntry test(Instant at, EntryFields f) throws BrokenEntry {
        String quantity = f.text("quantity");
        Dimension dimension = TestQuantity.dimension(quantity);
        if (dimension == null) {
            throw new BrokenEntry(
                    "quantity \"" + JsonLines.shown(quantity) + "\" of test is not known", TestQuantity.words());
        }
        boolean belowZero = dimension == Dimension.TEMPERATURE || dimension == Dimension.VOLTAGE;
        double value = f.measure("value", dimension, belowZero ? -2000 : 0, dimension == Dimension.PH ? 14 : 1e6);
        return new OperatorEntry.WaterTest(at, f.text("vessel"), quantity, value);
    }

    private static String treatment(EntryFields f) throws BrokenEntry {
        String word = f.text("treatment");
        if (Treatment.of(word).isEmpty()) {
            throw new BrokenEntry(
                    "treatment \"" + JsonLines.shown(word) + "\" of batch-treat is not known", Treatment.words());
        }
        return word;
    }

    private static Stocking stocking(String word) throws BrokenEntry {
        for (Stocking s : Stocking.values()) {
            if (s.word().equals(word)) {
                return s;
            }
        }
        throw new BrokenEntry("stocking \"" + JsonLines.shown(word) + "\" is not known", "fish or fishless");
    }
}
