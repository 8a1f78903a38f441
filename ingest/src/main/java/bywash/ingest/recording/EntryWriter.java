package bywash.ingest.recording;

import bywash.ingest.site.Dimension;
import bywash.ingest.site.Measure;
import bywash.rules.event.OperatorEntry;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** Writes one operator entry as a JSON object, fields in a fixed order. */
final class EntryWriter {
    private final JsonGenerator json;

    private EntryWriter(JsonGenerator json) {
        this.json = json;
    }

    static void write(JsonGenerator json, OperatorEntry entry) throws IOException {
        json.writeStartObject();
        json.writeStringField("time", IsoTime.format(entry.at()));
        json.writeStringField("operator", entry.word());
        new EntryWriter(json).fields(entry);
        json.writeEndObject();
    }

    private void fields(OperatorEntry entry) throws IOException {
        switch (entry.kind()) {
            case TOP_UP_START -> topUpStart((OperatorEntry.TopUpStart) entry);
            case TOP_UP_END -> text("vessel", ((OperatorEntry.TopUpEnd) entry).vessel());
            case BATCH_FILL -> batchFill((OperatorEntry.BatchFill) entry);
            case BATCH_TREAT -> batchTreat((OperatorEntry.BatchTreat) entry);
            case TEST -> test((OperatorEntry.WaterTest) entry);
            case STOCKING -> stocking((OperatorEntry.StockingChange) entry);
            case FEED -> StockEntries.write(json, (OperatorEntry.Feed) entry);
            case FISH_IN -> StockEntries.write(json, (OperatorEntry.FishIn) entry);
            case HARVEST -> StockEntries.write(json, (OperatorEntry.Harvest) entry);
            case WEIGH -> StockEntries.write(json, (OperatorEntry.Weigh) entry);
            case FISH_LOSS -> StockEntries.write(json, (OperatorEntry.FishLoss) entry);
            case FISH_MOVE -> StockEntries.write(json, (OperatorEntry.FishMove) entry);
            case PLANT -> BedEntries.write(json, (OperatorEntry.Plant) entry);
            case CROP_HARVEST -> BedEntries.write(json, (OperatorEntry.CropHarvest) entry);
            case BED -> BedEntries.write(json, (OperatorEntry.BedState) entry);
            case DOSE -> BedEntries.write(json, (OperatorEntry.Dose) entry);
            case CALIBRATE -> ProbeEntries.write(json, (OperatorEntry.Calibrate) entry);
            case PH_PLAN -> BedEntries.write(json, (OperatorEntry.PhAim) entry);
            case PROBE_CARE -> probeCare((OperatorEntry.ProbeCare) entry);
            case ACKNOWLEDGE -> acknowledge((OperatorEntry.Acknowledge) entry);
            case SHELVE -> shelve((OperatorEntry.Shelve) entry);
            case UNSHELVE -> unshelve((OperatorEntry.Unshelve) entry);
            case MAINTENANCE_START -> AlarmEntries.write(json, (OperatorEntry.MaintenanceStart) entry);
            case MAINTENANCE_END -> text("subject", ((OperatorEntry.MaintenanceEnd) entry).subject());
            case OUT_OF_SERVICE -> AlarmEntries.write(json, (OperatorEntry.OutOfService) entry);
            case RETURN_TO_SERVICE -> returnToService((OperatorEntry.ReturnToService) entry);
            case NOTE -> text("text", ((OperatorEntry.Note) entry).text());
            case STEP_DONE -> stepDone((OperatorEntry.StepDone) entry);
            case WITHDRAW -> WithdrawEntry.write(json, (OperatorEntry.Withdraw) entry);
        }
    }

    private void topUpStart(OperatorEntry.TopUpStart e) throws IOException {
        text("vessel", e.vessel());
        text("source", e.source());
        text("volume", Measure.format(e.volumeL(), "L"));
        text("duration", Measure.format(e.duration()));
    }

    private void batchFill(OperatorEntry.BatchFill e) throws IOException {
        text("vessel", e.vessel());
        text("volume", Measure.format(e.volumeL(), "L"));
    }

    private void batchTreat(OperatorEntry.BatchTreat e) throws IOException {
        text("vessel", e.vessel());
        text("treatment", e.treatment());
        if (!Double.isNaN(e.amountG())) {
            text("amount", Measure.format(e.amountG(), "g"));
        }
        StrengthField.write(json, e.strengthPercent());
    }

    private void test(OperatorEntry.WaterTest e) throws IOException {
        Dimension dimension = TestQuantity.dimension(e.quantity());
        text("vessel", e.vessel());
        text("quantity", e.quantity());
        text("value", Measure.format(e.value(), dimension == null ? "" : dimension.fixedUnit()));
    }

    private void stocking(OperatorEntry.StockingChange e) throws IOException {
        text("stocking", e.stocking().word());
        text("species", e.species());
    }

    private void probeCare(OperatorEntry.ProbeCare e) throws IOException {
        text("probe", e.probe());
        text("care", e.care());
    }

    private void acknowledge(OperatorEntry.Acknowledge e) throws IOException {
        text("alarm", e.alarm());
        text("subject", e.subject());
    }

    private void returnToService(OperatorEntry.ReturnToService e) throws IOException {
        text("alarm", e.alarm());
        text("subject", e.subject());
    }

    private void shelve(OperatorEntry.Shelve e) throws IOException {
        text("alarm", e.alarm());
        text("subject", e.subject());
        text("duration", Measure.format(e.duration()));
    }

    private void stepDone(OperatorEntry.StepDone e) throws IOException {
        text("incident", e.incident());
        text("step", e.step());
        text("note", e.note().isEmpty() ? null : e.note());
    }

    private void unshelve(OperatorEntry.Unshelve e) throws IOException {
        text("alarm", e.alarm());
        text("subject", e.subject());
    }

    private void text(String name, @Nullable String value) throws IOException {
        text(json, name, value);
    }

    /** Leaves out what is null. Half a surrogate pair, which UTF-8 cannot hold, becomes a question mark. */
    static void text(JsonGenerator json, String name, @Nullable String value) throws IOException {
        if (value != null) {
            json.writeStringField(name, new String(value.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
        }
    }
}
