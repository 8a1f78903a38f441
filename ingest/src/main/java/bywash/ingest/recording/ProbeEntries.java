package bywash.ingest.recording;

import bywash.ingest.site.Dimension;
import bywash.ingest.site.Measure;
import bywash.rules.event.CalibrationPoint;
import bywash.rules.event.OperatorEntry;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** The entry of a calibration, read and written: standards and readings as two lists of the same length. */
final class ProbeEntries {
    private static final Set<Dimension> PROBED = Set.of(
            Dimension.PH,
            Dimension.VOLTAGE,
            Dimension.CONCENTRATION,
            Dimension.TEMPERATURE,
            Dimension.CONDUCTIVITY,
            Dimension.LENGTH);
    private static final String RIGHT = "such as \"4.01\", \"171 mV\" or \"8.26 mg/L\"";

    private ProbeEntries() {}

    static OperatorEntry calibrate(Instant at, EntryFields f) throws BrokenEntry {
        List<String> standards = f.has("standards") ? f.texts("standards") : List.of();
        List<String> readings = f.has("readings") ? f.texts("readings") : List.of();
        if (standards.size() != readings.size()) {
            throw new BrokenEntry(
                    "calibrate has " + standards.size() + " standards and " + readings.size() + " readings",
                    "one reading for each standard");
        }
        List<CalibrationPoint> points = new ArrayList<>();
        for (int i = 0; i < standards.size(); i++) {
            Measure standard = measure(standards.get(i));
            Measure reading = measure(readings.get(i));
            points.add(new CalibrationPoint(fixed(standard), unit(standard), fixed(reading), unit(reading)));
        }
        double temperature = f.has("temperature") ? f.measure("temperature", Dimension.TEMPERATURE, 0, 60) : Double.NaN;
        String detail = f.textOrNull("detail");
        if (detail == null && points.isEmpty()) {
            throw new BrokenEntry("calibrate has no \"detail\"", "\"standards\" with \"readings\", or \"detail\"");
        }
        return new OperatorEntry.Calibrate(at, f.text("probe"), detail == null ? "" : detail, points, temperature);
    }

    static void write(JsonGenerator json, OperatorEntry.Calibrate e) throws IOException {
        EntryWriter.text(json, "probe", e.probe());
        if (!e.detail().isEmpty() || e.points().isEmpty()) {
            EntryWriter.text(json, "detail", e.detail());
        }
        if (!e.points().isEmpty()) {
            json.writeArrayFieldStart("standards");
            for (CalibrationPoint p : e.points()) {
                json.writeString(written(p.standard(), p.standardUnit()));
            }
            json.writeEndArray();
            json.writeArrayFieldStart("readings");
            for (CalibrationPoint p : e.points()) {
                json.writeString(written(p.reading(), p.readingUnit()));
            }
            json.writeEndArray();
        }
        if (!Double.isNaN(e.temperatureC())) {
            EntryWriter.text(json, "temperature", Measure.format(e.temperatureC(), "Cel"));
        }
    }

    private static String written(double value, String unit) {
        return Measure.format(value, unit.equals("pH") ? "" : unit);
    }

    private static Measure measure(String text) throws BrokenEntry {
        try {
            Measure m = Measure.parse(text);
            Dimension of = Dimension.of(m.unit());
            if (m.unit().isEmpty() || of != null && PROBED.contains(of)) {
                return m;
            }
            throw new BrokenEntry("calibrate: \"" + JsonLines.shown(text) + "\" is nothing a probe measures", RIGHT);
        } catch (Measure.NotAMeasure e) {
            throw new BrokenEntry("calibrate: " + e.what(), RIGHT);
        }
    }

    private static Dimension dimension(Measure m) {
        Dimension d = Dimension.of(m.unit());
        return m.unit().isEmpty() || d == null ? Dimension.PH : d;
    }

    private static double fixed(Measure m) {
        return m.unit().isEmpty() ? m.number().doubleValue() : m.in(dimension(m));
    }

    private static String unit(Measure m) {
        return dimension(m).fixedUnit();
    }
}
