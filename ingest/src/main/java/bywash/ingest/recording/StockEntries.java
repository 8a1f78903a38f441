package bywash.ingest.recording;

import bywash.ingest.site.Dimension;
import bywash.ingest.site.Measure;
import bywash.rules.event.Appetite;
import bywash.rules.event.OperatorEntry;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The entries on fish, read and written. */
final class StockEntries {
    private static final double MOST_G = 1e9;

    private StockEntries() {}

    static OperatorEntry feed(Instant at, EntryFields f) throws BrokenEntry {
        double massG = f.measure("mass", Dimension.MASS, 0, MOST_G);
        return new OperatorEntry.Feed(at, massG, protein(f), f.textOrNull("cohort"), appetite(f));
    }

    static void write(JsonGenerator json, OperatorEntry.Feed e) throws IOException {
        text(json, "mass", Measure.format(e.massG(), "g"));
        if (!Double.isNaN(e.proteinFraction())) {
            text(json, "protein", Percent.format(e.proteinFraction()));
        }
        text(json, "cohort", e.cohort());
        if (e.appetite() != null) {
            text(json, "appetite", e.appetite().word());
        }
    }

    static OperatorEntry fishIn(Instant at, EntryFields f) throws BrokenEntry {
        return new OperatorEntry.FishIn(
                at,
                f.text("cohort"),
                f.text("species"),
                f.count("count"),
                f.measure("mean-mass", Dimension.MASS, 0, MOST_G),
                f.textOrNull("vessel"));
    }

    static void write(JsonGenerator json, OperatorEntry.FishIn e) throws IOException {
        text(json, "cohort", e.cohort());
        text(json, "species", e.species());
        json.writeNumberField("count", e.count());
        text(json, "mean-mass", Measure.format(e.meanMassG(), "g"));
        text(json, "vessel", e.vessel());
    }

    static OperatorEntry harvest(Instant at, EntryFields f) throws BrokenEntry {
        List<Double> masses = f.has("masses") ? f.measures("masses", Dimension.MASS, MOST_G) : List.of();
        double total = f.measureOrNone("total", Dimension.MASS, MOST_G);
        int count = f.count("count");
        if (masses.size() > count) {
            throw new BrokenEntry(
                    "\"masses\" of harvest has " + masses.size() + " fish, more than count " + count,
                    "at most one mass a fish");
        }
        if (Double.isNaN(total) && masses.size() < count) {
            throw new BrokenEntry(
                    "harvest has " + masses.size() + " masses of " + count + " fish and no \"total\"",
                    "a mass for each fish, or \"total\"");
        }
        return new OperatorEntry.Harvest(at, f.text("cohort"), count, masses, total);
    }

    static void write(JsonGenerator json, OperatorEntry.Harvest e) throws IOException {
        text(json, "cohort", e.cohort());
        json.writeNumberField("count", e.count());
        masses(json, e.massesG());
        if (!Double.isNaN(e.totalG())) {
            text(json, "total", Measure.format(e.totalG(), "g"));
        }
    }

    /** Masses one by one, or a count with a total. */
    static OperatorEntry weigh(Instant at, EntryFields f) throws BrokenEntry {
        boolean all = f.oneOf("of", "sample", "all") == 1;
        if (f.has("masses")) {
            List<Double> masses = f.measures("masses", Dimension.MASS, MOST_G);
            double total = masses.stream().mapToDouble(Double::doubleValue).sum();
            return new OperatorEntry.Weigh(at, f.text("cohort"), all, masses.size(), total, masses);
        }
        return new OperatorEntry.Weigh(
                at, f.text("cohort"), all, f.count("count"), f.measure("total", Dimension.MASS, 0, MOST_G), List.of());
    }

    static void write(JsonGenerator json, OperatorEntry.Weigh e) throws IOException {
        text(json, "cohort", e.cohort());
        text(json, "of", e.all() ? "all" : "sample");
        if (e.massesG().isEmpty()) {
            json.writeNumberField("count", e.count());
            text(json, "total", Measure.format(e.totalG(), "g"));
        } else {
            masses(json, e.massesG());
        }
    }

    static OperatorEntry fishLoss(Instant at, EntryFields f) throws BrokenEntry {
        return new OperatorEntry.FishLoss(at, f.text("cohort"), f.count("count"), f.textOrNull("cause"));
    }

    static void write(JsonGenerator json, OperatorEntry.FishLoss e) throws IOException {
        text(json, "cohort", e.cohort());
        json.writeNumberField("count", e.count());
        text(json, "cause", e.cause());
    }

    static OperatorEntry fishMove(Instant at, EntryFields f) throws BrokenEntry {
        return new OperatorEntry.FishMove(
                at, f.text("cohort"), f.count("count"), f.text("vessel"), f.textOrNull("into"));
    }

    static void write(JsonGenerator json, OperatorEntry.FishMove e) throws IOException {
        text(json, "cohort", e.cohort());
        json.writeNumberField("count", e.count());
        text(json, "vessel", e.vessel());
        text(json, "into", e.into());
    }

    private static void masses(JsonGenerator json, List<Double> massesG) throws IOException {
        json.writeArrayFieldStart("masses");
        for (double mass : massesG) {
            json.writeString(Measure.format(mass, "g"));
        }
        json.writeEndArray();
    }

    private static @Nullable Appetite appetite(EntryFields f) throws BrokenEntry {
        if (!f.has("appetite")) {
            return null;
        }
        String word = f.text("appetite");
        for (Appetite a : Appetite.values()) {
            if (a.word().equals(word)) {
                return a;
            }
        }
        String words = Arrays.stream(Appetite.values()).map(Appetite::word).collect(Collectors.joining(", "));
        throw new BrokenEntry("appetite \"" + JsonLines.shown(word) + "\" is not known", words);
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

    private static void text(JsonGenerator json, String name, @Nullable String value) throws IOException {
        EntryWriter.text(json, name, value);
    }
}
