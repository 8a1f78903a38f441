package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordingReader;
import bywash.ingest.recording.RecordingWriter;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.samples.SampleRecordings;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every sample recording's alarms against its label. What must be raised
 * follows from the scenario; the minutes allowed were set after seeing a run, so they guard against getting worse and
 * do not show that a budget is met. */
class SampleRecordingsTest {
    /** What a scenario must raise, within how many minutes of its cause, and that it must raise no water alarm else. */
    private record Label(AlarmKind kind, String subject, long causeMin, long withinMin) {}

    private static final Set<AlarmKind> WATER = EnumSet.of(
            AlarmKind.UNPLANNED_INFLOW, AlarmKind.UNPLANNED_LOSS, AlarmKind.LINE_NOT_SHUT, AlarmKind.CHLORINE_RISK);

    private static List<Label> labels(SampleRecordings sample) {
        return switch (sample) {
            case QUIET_SIPHONS, DECLARED_TOP_UP -> List.of();
            case VALVE_OPEN ->
                List.of(
                        new Label(AlarmKind.UNPLANNED_INFLOW, "sump", 210, 15),
                        new Label(AlarmKind.CHLORINE_RISK, "system", 210, 15));
            case HOSE_IN_SUMP ->
                List.of(
                        new Label(AlarmKind.UNPLANNED_INFLOW, "sump", 240, 14),
                        new Label(AlarmKind.CHLORINE_RISK, "system", 240, 15));
            case PUMP_STOP_RESTART -> List.of(new Label(AlarmKind.PUMP_STOPPED, "sump", 200, 2));
            case TOP_UP_DRIBBLING -> List.of(new Label(AlarmKind.LINE_NOT_SHUT, "sump", 215, 10));
            case PROBE_SILENT -> List.of(new Label(AlarmKind.PROBE_SILENT, "sump-level", 200, 2));
            case RAIN -> List.of(new Label(AlarmKind.UNPLANNED_INFLOW, "sump", 240, 36));
        };
    }

    @ParameterizedTest
    @EnumSource(SampleRecordings.class)
    void raisesWhatItsLabelSays(SampleRecordings sample) throws IOException {
        List<AlarmTransition> raised = new ArrayList<>();
        play(sample, t -> {
            if (t.state() == AlarmState.UNACKNOWLEDGED) {
                raised.add(t);
            }
        });
        for (Label label : labels(sample)) {
            Instant cause = SampleRecordings.start().plus(Duration.ofMinutes(label.causeMin()));
            Instant first = raised.stream()
                    .filter(t -> t.kind() == label.kind() && t.subject().equals(label.subject()))
                    .map(AlarmTransition::at)
                    .findFirst()
                    .orElse(null);
            if (first == null) {
                throw new AssertionError(label + " was not raised");
            }
            assertTrue(!first.isBefore(cause), label + " came before its cause: " + first);
            assertTrue(
                    !first.isAfter(cause.plus(Duration.ofMinutes(label.withinMin()))), label + " came late: " + first);
        }
        Set<AlarmKind> allowed = EnumSet.noneOf(AlarmKind.class);
        labels(sample).forEach(label -> allowed.add(label.kind()));
        if (sample == SampleRecordings.RAIN) {
            // nobody told the watch that it rains, and unknown water counts as mains water
            allowed.add(AlarmKind.CHLORINE_RISK);
        }
        List<AlarmTransition> false_ = raised.stream()
                .filter(t -> WATER.contains(t.kind()) && !allowed.contains(t.kind()))
                .toList();
        assertEquals(List.of(), false_);
    }

    @ParameterizedTest
    @EnumSource(SampleRecordings.class)
    void isWhatItsSeedMakes(SampleRecordings sample) throws IOException {
        ByteArrayOutputStream made = new ByteArrayOutputStream();
        RecordingWriter writer = new RecordingWriter(made);
        var site = sample.simulation();
        for (RecordedLine line = site.next(); line != null; line = site.next()) {
            writer.write(line);
        }
        writer.flush();
        try (InputStream in = new GZIPInputStream(resource("recordings/" + sample.fileName()))) {
            assertEquals(made.toString(StandardCharsets.UTF_8), new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    @Test
    void givesTheSameBytesTwice() throws IOException {
        assertEquals(lines(), lines());
        assertTrue(lines().contains("\"alarm\":\"unplanned-inflow\""));
    }

    private static String lines() throws IOException {
        StringBuilder text = new StringBuilder();
        play(
                SampleRecordings.VALVE_OPEN,
                t -> text.append(AlarmLines.of("larkfield", t)).append('\n'));
        return text.toString();
    }

    private static void play(SampleRecordings sample, java.util.function.Consumer<AlarmTransition> to)
            throws IOException {
        Pipeline pipeline = new Pipeline(site(), to, reading -> {});
        try (RecordingReader reader =
                new RecordingReader(resource("recordings/" + sample.fileName()), (line, what, right) -> {
                    throw new AssertionError(line + ": " + what);
                })) {
            for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                pipeline.accept(line);
            }
        }
        pipeline.finish();
        assertEquals(0, pipeline.refused());
        assertEquals(0, pipeline.unknownTopics());
    }

    private static SiteFile site() throws IOException {
        try (InputStream in = resource("sites/larkfield.yaml")) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            if (SiteFileReader.read(text, "larkfield.yaml") instanceof SiteFileResult.Good good) {
                return good.siteFile();
            }
            throw new AssertionError("the demo site is faulty");
        }
    }

    private static InputStream resource(String name) {
        InputStream in = SampleRecordings.class.getResourceAsStream("/bywash/samples/" + name);
        if (in == null) {
            throw new AssertionError(name + " is missing");
        }
        return in;
    }
}
