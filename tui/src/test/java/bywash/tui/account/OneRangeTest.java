package bywash.tui.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordingReader;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.alarm.AlarmView;
import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.Spread;
import bywash.rules.engine.Snapshot;
import bywash.rules.response.ResponseSheet;
import bywash.samples.SampleRecordings;
import bywash.tui.watch.Larkfield;
import bywash.tui.watch.Pipeline;
import bywash.tui.watch.ReplayReport;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The litres of one incident are one range: in the alarm, on the response sheet, in the log, in the report and in its JSON. */
class OneRangeTest {
    private static final Instant END = SampleRecordings.start().plus(Duration.ofHours(12));

    private final List<AlarmTransition> transitions = new ArrayList<>();
    private int looks;

    @TempDir
    Path folder;

    @ParameterizedTest
    @EnumSource(names = {"VALVE_OPEN", "HOSE_IN_SUMP", "RAIN"})
    void isTheSameEverywhere(SampleRecordings sample) throws IOException {
        List<RecordedLine> lines = lines(sample);
        Pipeline pipeline = new Pipeline(Larkfield.site(), transitions::add, reading -> {});
        ReplayReport json = new ReplayReport();
        pipeline.onFlows((at, findings) -> {
            json.flows(findings);
            look(
                    pipeline,
                    findings.stream()
                            .filter(f -> f.verdict() == FlowFinding.Verdict.UNPLANNED_INFLOW)
                            .toList());
        });
        AccountRun run = new AccountRun(Larkfield.site(), SampleRecordings.start(), END);
        for (RecordedLine line : lines) {
            pipeline.accept(line);
            run.accept(line);
        }
        pipeline.finish();
        assertTrue(looks > 100, "a running inflow was looked at " + looks + " times");
        json.write("larkfield", folder.resolve("report.json"));
        JsonNode sump = new ObjectMapper()
                .readTree(folder.resolve("report.json").toFile())
                .at("/vessels/sump");
        Map<String, Object> last = transitions.stream()
                .filter(t -> t.kind() == AlarmKind.UNPLANNED_INFLOW)
                .reduce((a, b) -> b)
                .orElseThrow()
                .values();
        FlowRun told = run.finish(END, null).flows().stream()
                .filter(f -> f.vessel().equals("sump") && f.in())
                .reduce((a, b) -> {
                    throw new AssertionError("one inflow, told as two");
                })
                .orElseThrow();
        assertEquals(whole(last, "volume_low_l"), Math.round(told.litres().lowL()));
        assertEquals(whole(last, "volume_l"), Math.round(told.litres().likelyL()));
        assertEquals(whole(last, "volume_high_l"), Math.round(told.litres().highL()));
        assertEquals(whole(last, "volume_low_l"), sump.get("inflow_low_l").asLong());
        assertEquals(whole(last, "volume_l"), sump.get("inflow_l").asLong());
        assertEquals(whole(last, "volume_high_l"), sump.get("inflow_high_l").asLong());
    }

    private void look(Pipeline pipeline, List<FlowFinding> inflows) {
        if (inflows.isEmpty()) {
            return;
        }
        Snapshot s = pipeline.snapshot();
        for (FlowFinding inflow : inflows) {
            Spread moved = inflow.moved();
            for (AlarmView alarm : s.alarms()) {
                if (alarm.kind() == AlarmKind.UNPLANNED_INFLOW) {
                    assertTrue(alarm.message().contains(moved.words()), alarm.message() + ": not " + moved.words());
                    assertFalse(
                            alarm.why().matches(".*L/min for [0-9]+ min.*"),
                            "a screen says since when, and must not say it twice: " + alarm.why());
                }
            }
            for (ResponseSheet sheet : s.care().sheets()) {
                looks++;
                assertTrue(
                        sheet.water().stream().anyMatch(water -> water.startsWith("sump: " + moved.words())),
                        sheet.water() + ": not " + moved.words());
            }
        }
    }

    private static long whole(Map<String, Object> values, String key) {
        return Math.round(((Number) Objects.requireNonNull(values.get(key), key)).doubleValue());
    }

    private static List<RecordedLine> lines(SampleRecordings sample) throws IOException {
        List<RecordedLine> lines = new ArrayList<>();
        InputStream in = Objects.requireNonNull(
                SampleRecordings.class.getResourceAsStream("/bywash/samples/recordings/" + sample.fileName()));
        try (RecordingReader reader = new RecordingReader(in, (line, what, right) -> {
            throw new AssertionError(line + ": " + what);
        })) {
            for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                lines.add(line);
            }
        }
        return lines;
    }
}
