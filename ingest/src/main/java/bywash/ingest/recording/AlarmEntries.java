package bywash.ingest.recording;

import bywash.ingest.site.Measure;
import bywash.rules.event.OperatorEntry.MaintenanceStart;
import bywash.rules.event.OperatorEntry.OutOfService;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.Objects;

/** Entries that make alarms quiet for a while: maintenance, and alarms out of service. */
final class AlarmEntries {
    private AlarmEntries() {}

    static MaintenanceStart maintenanceStart(Instant at, EntryFields f) throws BrokenEntry {
        return new MaintenanceStart(at, f.text("subject"), f.duration("duration"), detail(f));
    }

    static OutOfService outOfService(Instant at, EntryFields f) throws BrokenEntry {
        return new OutOfService(at, f.text("alarm"), f.text("subject"), detail(f));
    }

    private static String detail(EntryFields f) throws BrokenEntry {
        return Objects.requireNonNullElse(f.textOrNull("detail"), "");
    }

    static void write(JsonGenerator json, MaintenanceStart e) throws IOException {
        json.writeStringField("subject", e.subject());
        json.writeStringField("duration", Measure.format(e.duration()));
        detail(json, e.detail());
    }

    static void write(JsonGenerator json, OutOfService e) throws IOException {
        json.writeStringField("alarm", e.alarm());
        json.writeStringField("subject", e.subject());
        detail(json, e.detail());
    }

    private static void detail(JsonGenerator json, String detail) throws IOException {
        if (!detail.isEmpty()) {
            json.writeStringField("detail", detail);
        }
    }
}
