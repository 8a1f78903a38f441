package bywash.tui.watch;

import bywash.ingest.recording.IsoTime;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.detect.FlowFinding;
import bywash.rules.engine.Snapshot;
import bywash.rules.engine.VesselStatus;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What a replay adds up to: water moved, residual over time, incidents, alarm counts and rates. */
public final class ReplayReport {
    private static final class Litres {
        private double inflow;
        private double loss;
        private double planned;
        private double seen;
        private @Nullable Instant since;
    }

    private final Map<String, Litres> vessels = new TreeMap<>();
    private final Map<String, List<AlarmTransition>> incidents = new TreeMap<>();
    private final Map<String, Integer> counts = new TreeMap<>();
    private @Nullable Instant first;
    private @Nullable Instant last;
    private final ResidualSeries residual = new ResidualSeries();

    public void transition(AlarmTransition t) {
        if (t.state() == AlarmState.UNACKNOWLEDGED && !t.again()) {
            counts.merge(t.kind().word(), 1, Integer::sum);
        }
        incidents.computeIfAbsent(t.incident(), key -> new ArrayList<>()).add(t);
    }

    public void snapshot(Snapshot s) {
        Instant at = s.at();
        if (at == null) {
            return;
        }
        first = first == null ? at : first;
        last = at;
        residual.add(at, s.residual());
        for (VesselStatus vessel : s.vessels()) {
            if (vessel.flow() != null) {
                add(vessels.computeIfAbsent(vessel.vessel().id(), id -> new Litres()), vessel.flow());
            }
        }
    }

    private static void add(Litres litres, FlowFinding flow) {
        if (flow.since() == null) {
            litres.since = null;
            return;
        }
        if (!flow.since().equals(litres.since)) {
            litres.since = flow.since();
            litres.seen = 0;
        }
        double now = Math.abs(flow.volumeL());
        double more = now - litres.seen;
        litres.seen = now;
        switch (flow.verdict()) {
            case UNPLANNED_INFLOW, LINE_NOT_SHUT -> litres.inflow += more;
            case UNPLANNED_LOSS -> litres.loss += more;
            case PLANNED -> litres.planned += more;
            case LEARNING, QUIET, DRAIN_DOWN -> litres.seen = 0;
        }
    }

    /** Writes the report as JSON. */
    public void write(String site, Path file) throws IOException {
        try (JsonGenerator json = new JsonFactory().createGenerator(Files.newBufferedWriter(file))) {
            json.useDefaultPrettyPrinter();
            json.writeStartObject();
            json.writeStringField("site", site);
            json.writeStringField("from", first == null ? "" : IsoTime.format(first));
            json.writeStringField("to", last == null ? "" : IsoTime.format(last));
            vessels(json);
            residual.write(json);
            incidents(json);
            counts(json);
            json.writeEndObject();
        }
    }

    private void vessels(JsonGenerator json) throws IOException {
        json.writeObjectFieldStart("vessels");
        for (Map.Entry<String, Litres> entry : vessels.entrySet()) {
            json.writeObjectFieldStart(entry.getKey());
            json.writeNumberField("inflow_l", Math.round(entry.getValue().inflow));
            json.writeNumberField("loss_l", Math.round(entry.getValue().loss));
            json.writeNumberField("planned_l", Math.round(entry.getValue().planned));
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private void incidents(JsonGenerator json) throws IOException {
        json.writeArrayFieldStart("incidents");
        for (Map.Entry<String, List<AlarmTransition>> incident : incidents.entrySet()) {
            json.writeStartObject();
            json.writeStringField("incident", incident.getKey());
            json.writeArrayFieldStart("timeline");
            for (AlarmTransition t : incident.getValue()) {
                json.writeStartObject();
                json.writeStringField("time", IsoTime.format(t.at()));
                json.writeStringField("alarm", t.kind().word());
                json.writeStringField("subject", t.subject());
                json.writeStringField("state", t.state().word());
                json.writeStringField("message", t.message());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void counts(JsonGenerator json) throws IOException {
        json.writeObjectFieldStart("alarms");
        int total = 0;
        for (Map.Entry<String, Integer> count : counts.entrySet()) {
            json.writeNumberField(count.getKey(), count.getValue());
            total += count.getValue();
        }
        json.writeEndObject();
        double hours = first == null || last == null
                ? 0
                : Duration.between(first, last).toSeconds() / 3600.0;
        json.writeNumberField("alarms_per_day", hours > 0 ? Math.round(total / hours * 240) / 10.0 : 0);
    }
}
