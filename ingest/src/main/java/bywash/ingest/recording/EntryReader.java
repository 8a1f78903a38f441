package bywash.ingest.recording;

import bywash.ingest.site.Dimension;
import bywash.ingest.site.Measure;
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
            case TOP_UP_START ->
                new OperatorEntry.TopUpStart(
                        at,
                        f.text("vessel"),
                        f.text("source"),
                        f.measure("volume", Dimension.VOLUME, 0, MOST_L),
                        f.duration("duration"));
            case TOP_UP_END -> new OperatorEntry.TopUpEnd(at, f.text("vessel"));
            case BATCH_FILL ->
                new OperatorEntry.BatchFill(at, f.text("vessel"), f.measure("volume", Dimension.VOLUME, 0, MOST_L));
            case BATCH_TREAT ->
                new OperatorEntry.BatchTreat(
                        at, f.text("vessel"), f.text("treatment"), f.measureOrNone("amount", Dimension.MASS, MOST_G));
            case TEST -> test(at, f);
            case STOCKING -> new OperatorEntry.StockingChange(at, stocking(f.text("stocking")));
            case FEED -> new OperatorEntry.Feed(at, f.measure("mass", Dimension.MASS, 0, MOST_G), protein(f));
            case FISH_IN ->
                new OperatorEntry.FishIn(
                        at,
                        f.text("cohort"),
                        f.text("species"),
                        f.count("count"),
                        f.measure("mean-mass", Dimension.MASS, 0, MOST_G));
            case HARVEST ->
                new OperatorEntry.Harvest(
                        at, f.text("cohort"), f.count("count"), f.measures("masses", Dimension.MASS, MOST_G));
            case CALIBRATE -> new OperatorEntry.Calibrate(at, f.text("probe"), f.text("detail"));
            case ACKNOWLEDGE -> new OperatorEntry.Acknowledge(at, f.textOrNull("alarm"), f.textOrNull("subject"));
            case SHELVE -> new OperatorEntry.Shelve(at, f.text("alarm"), f.text("subject"), f.duration("duration"));
            case UNSHELVE -> new OperatorEntry.Unshelve(at, f.text("alarm"), f.text("subject"));
            case NOTE -> new OperatorEntry.Note(at, f.text("text"));
        };
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

    private static Stocking stocking(String word) throws BrokenEntry {
        for (Stocking s : Stocking.values()) {
            if (s.word().equals(word)) {
                return s;
            }
        }
        throw new BrokenEntry("stocking \"" + JsonLines.shown(word) + "\" is not known", "fish or fishless");
    }

    private static double protein(EntryFields f) throws BrokenEntry {
        if (!f.has("protein")) {
            return Double.NaN;
        }
        try {
            return Percent.parse(f.text("protein"));
        } catch (Measure.NotAMeasure e) {
            throw new BrokenEntry("\"protein\" of feed: " + e.what(), e.right());
        }
    }
}
