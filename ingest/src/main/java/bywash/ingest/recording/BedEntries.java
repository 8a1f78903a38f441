package bywash.ingest.recording;

import bywash.ingest.site.Dimension;
import bywash.ingest.site.Measure;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.water.PhReagent;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The entries on beds and on what is added to the water, read and written. */
final class BedEntries {
    private static final double MOST_G = 1e9;
    private static final double MOST_M2 = 1e5;

    private BedEntries() {}

    static OperatorEntry plant(Instant at, EntryFields f) throws BrokenEntry {
        return new OperatorEntry.Plant(
                at, f.text("vessel"), f.text("crop"), f.measure("area", Dimension.AREA, 0, MOST_M2));
    }

    static void write(JsonGenerator json, OperatorEntry.Plant e) throws IOException {
        EntryWriter.text(json, "vessel", e.vessel());
        EntryWriter.text(json, "crop", e.crop());
        EntryWriter.text(json, "area", Measure.format(e.areaM2(), "m2"));
    }

    static OperatorEntry cropHarvest(Instant at, EntryFields f) throws BrokenEntry {
        double cleared = f.has("cleared") ? f.measure("cleared", Dimension.AREA, 0, MOST_M2) : 0;
        return new OperatorEntry.CropHarvest(
                at, f.text("vessel"), f.text("crop"), f.measure("mass", Dimension.MASS, 0, MOST_G), cleared);
    }

    static void write(JsonGenerator json, OperatorEntry.CropHarvest e) throws IOException {
        EntryWriter.text(json, "vessel", e.vessel());
        EntryWriter.text(json, "crop", e.crop());
        EntryWriter.text(json, "mass", Measure.format(e.massG(), "g"));
        if (e.clearedM2() > 0) {
            EntryWriter.text(json, "cleared", Measure.format(e.clearedM2(), "m2"));
        }
    }

    static OperatorEntry bed(Instant at, EntryFields f) throws BrokenEntry {
        return new OperatorEntry.BedState(at, f.text("vessel"), f.oneOf("state", "off", "on") == 1);
    }

    static void write(JsonGenerator json, OperatorEntry.BedState e) throws IOException {
        EntryWriter.text(json, "vessel", e.vessel());
        EntryWriter.text(json, "state", e.on() ? "on" : "off");
    }

    static OperatorEntry dose(Instant at, EntryFields f) throws BrokenEntry {
        return new OperatorEntry.Dose(
                at,
                f.text("vessel"),
                f.text("reagent"),
                f.measure("amount", Dimension.MASS, 0, MOST_G),
                StrengthField.of(f, "dose"));
    }

    static void write(JsonGenerator json, OperatorEntry.Dose e) throws IOException {
        EntryWriter.text(json, "vessel", e.vessel());
        EntryWriter.text(json, "reagent", e.reagent());
        EntryWriter.text(json, "amount", Measure.format(e.massG(), "g"));
        StrengthField.write(json, e.strengthPercent());
    }

    static OperatorEntry phAim(Instant at, EntryFields f) throws BrokenEntry {
        String reagent = f.text("reagent");
        if (!reagent.equals(PhAim.NITRIFICATION) && PhReagent.of(reagent).isEmpty()) {
            String words = Stream.of(PhReagent.values()).map(PhReagent::word).collect(Collectors.joining(", "));
            throw new BrokenEntry(
                    "reagent \"" + JsonLines.shown(reagent) + "\" of ph-plan is not known",
                    words + " or " + PhAim.NITRIFICATION);
        }
        double read = StrengthField.of(f, "ph-plan");
        double strength = Double.isNaN(read) ? 100 : read;
        return new PhAim(at, f.measure("target", Dimension.PH, 4, 10), reagent, strength);
    }

    static void write(JsonGenerator json, PhAim e) throws IOException {
        EntryWriter.text(json, "target", Measure.format(e.targetPh(), ""));
        EntryWriter.text(json, "reagent", e.reagent());
        EntryWriter.text(json, "strength", Percent.format(e.strengthPercent() / 100));
    }
}
