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
        EntryKind kind = EntryKind.of(entry.word());
        if (kind == null) {
            throw new IllegalArgumentException("no kind of entry is called " + entry.word());
        }
        switch (kind) {
            case TOP_UP_START -> topUpStart((OperatorEntry.TopUpStart) entry);
            case TOP_UP_END -> text("vessel", ((OperatorEntry.TopUpEnd) entry).vessel());
            case BATCH_FILL -> batchFill((OperatorEntry.BatchFill) entry);
            case BATCH_TREAT -> batchTreat((OperatorEntry.BatchTreat) entry);
            case TEST -> test((OperatorEntry.WaterTest) entry);
            case STOCKING ->
                text(
                        "stocking",
                        ((OperatorEntry.StockingChange) entry).stocking().word());
            case FEED -> feed((OperatorEntry.Feed) entry);
            case FISH_IN -> fishIn((OperatorEntry.FishIn) entry);
            case HARVEST -> harvest((OperatorEntry.Harvest) entry);
            case CALIBRATE -> calibrate((OperatorEntry.Calibrate) entry);
            case ACKNOWLEDGE -> acknowledge((OperatorEntry.Acknowledge) entry);
            case SHELVE -> shelve((OperatorEntry.Shelve) entry);
            case UNSHELVE -> unshelve((OperatorEntry.Unshelve) entry);
            case NOTE -> text("text", ((OperatorEntry.Note) entry).text());
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
    }

    private void test(OperatorEntry.WaterTest e) throws IOException {
        Dimension dimension = TestQuantity.dimension(e.quantity());
        text("vessel", e.vessel());
        text("quantity", e.quantity());
        text("value", Measure.format(e.value(), dimension == null ? "" : dimension.fixedUnit()));
    }

    private void feed(OperatorEntry.Feed e) throws IOException {
        text("mass", Measure.format(e.massG(), "g"));
        if (!Double.isNaN(e.proteinFraction())) {
            text("protein", Percent.format(e.proteinFraction()));
        }
    }

    private void fishIn(OperatorEntry.FishIn e) throws IOException {
        text("cohort", e.cohort());
        text("species", e.species());
        json.writeNumberField("count", e.count());
        text("mean-mass", Measure.format(e.meanMassG(), "g"));
    }

    private void harvest(OperatorEntry.Harvest e) throws IOException {
        text("cohort", e.cohort());
        json.writeNumberField("count", e.count());
        json.writeArrayFieldStart("masses");
        for (double mass : e.massesG()) {
            json.writeString(Measure.format(mass, "g"));
        }
        json.writeEndArray();
    }

    private void calibrate(OperatorEntry.Calibrate e) throws IOException {
        text("probe", e.probe());
        text("detail", e.detail());
    }

    private void acknowledge(OperatorEntry.Acknowledge e) throws IOException {
        text("alarm", e.alarm());
        text("subject", e.subject());
    }

    private void shelve(OperatorEntry.Shelve e) throws IOException {
        text("alarm", e.alarm());
        text("subject", e.subject());
        text("duration", Measure.format(e.duration()));
    }

    private void unshelve(OperatorEntry.Unshelve e) throws IOException {
        text("alarm", e.alarm());
        text("subject", e.subject());
    }

    /** Half a surrogate pair, which UTF-8 cannot hold, becomes a question mark. */
    private void text(String name, @Nullable String value) throws IOException {
        if (value != null) {
            json.writeStringField(name, new String(value.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
        }
    }
}
