package bywash.tui.watch;

import bywash.ingest.recording.IsoTime;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.detect.Spread;
import bywash.rules.engine.Snapshot;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What a replay adds up to: water moved, residual over time, incidents, alarm counts and rates. */
public final class ReplayReport {
    /** Sums of what was found, each flow with its last figures. */
    private static final class Litres {
        private final Map<Verdict, double[]> sums = new EnumMap<>(Verdict.class);
        private @Nullable FlowFinding last;

        void take(FlowFinding flow) {
            FlowFinding before = last;
            boolean moves = flow.since() != null;
            if (before != null && (!moves || !Objects.equals(before.since(), flow.since()))) {
                book(before);
            }
            last = moves ? flow : null;
        }

        private void book(FlowFinding flow) {
            if (flow.ranOver()) {
                add(Verdict.PLANNED, Spread.of(flow.declaredL(), 0));
            }
            add(kind(flow.verdict()), flow.beyond());
        }

        private void add(Verdict kind, Spread moved) {
            double[] sum = sums.computeIfAbsent(kind, k -> new double[3]);
            sum[0] += moved.lowL();
            sum[1] += moved.likelyL();
            sum[2] += moved.highL();
        }

        private static Verdict kind(Verdict verdict) {
            return verdict == Verdict.LINE_NOT_SHUT ? Verdict.UNPLANNED_INFLOW : verdict;
        }

        void write(JsonGenerator json, String name, Verdict kind) throws IOException {
            double[] sum = sums.getOrDefault(kind, new double[3]);
            json.writeNumberField(name + "_l", Math.round(sum[1]));
            json.writeNumberField(name + "_low_l", Math.round(sum[0]));
            json.writeNumberField(name + "_high_l", Math.round(sum[2]));
        }

        void finish() {
            if (last != null) {
                book(last);
                last = null;
            }
        }
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
    }

    /** What the balance found at a tick. */
    public void flows(Collection<FlowFinding> findings) {
        for (FlowFinding finding : findings) {
            vessels.computeIfAbsent(finding.vessel(), id -> new Litres()).take(finding);
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
            entry.getValue().finish();
            entry.getValue().write(json, "inflow", Verdict.UNPLANNED_INFLOW);
            entry.getValue().write(json, "loss", Verdict.UNPLANNED_LOSS);
            entry.getValue().write(json, "planned", Verdict.PLANNED);
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
