package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.journal.JournalReader;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.engine.ProbeStatus;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Somebody sends far more on one topic than its probe would. */
class FloodTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");
    private static final int A_SECOND = 500;

    @TempDir
    Path dir;

    private Instant now = T0;

    private void offer(Station station, String topic, String payload) {
        station.queue().offer(new Message(now, topic, payload.getBytes(StandardCharsets.UTF_8), 0, false));
    }

    @Test
    void isThinnedBeforeTheJournalSaidByTopicAndRateAndTheReplayIsTheSame() throws Exception {
        Station station = Station.open(Larkfield.site(), dir, () -> now);
        List<String> lines = new ArrayList<>();
        station.outlets().add((t, line) -> lines.add(line));
        for (int s = 0; s < 600; s++) {
            now = T0.plusSeconds(s);
            for (int i = 0; i < A_SECOND; i++) {
                offer(station, "larkfield/orp", Integer.toString(100 + (s * 7 + i * 13) % 400));
            }
            if (s % 10 == 0) {
                offer(station, "larkfield/do", "{\"oxygen\":{\"mgl\":" + (s < 120 ? 7.5 : 2.0) + "}}");
            }
            List<Message> batch = new ArrayList<>();
            station.queue().drain(batch, 0);
            station.watch().step(batch);
        }
        FrameSource frame = station.watch().latest();
        assertEquals("FLOOD on larkfield/orp: 500 messages a second, 1.1 let through; find who sends it", frame.note());
        assertTrue(frame.dropped() > 290_000, () -> frame.dropped() + " dropped");
        ProbeStatus oxygen = frame.snapshot().probes().stream()
                .filter(p -> p.probe().id().equals("fish-do"))
                .findFirst()
                .orElseThrow();
        assertEquals(ProbeStatus.Health.GOOD, oxygen.health(), "the others are heard");
        assertTrue(lines.stream().anyMatch(line -> line.contains("low-oxygen")), lines::toString);
        station.watch().end();
        assertTrue(Files.size(dir.resolve("larkfield.db")) < 1_000_000, "the journal stays small");
        assertEquals(lines, replayed());
    }

    private List<String> replayed() throws Exception {
        List<String> lines = new ArrayList<>();
        Pipeline pipeline = new Pipeline(Larkfield.site(), t -> lines.add(AlarmLines.of("larkfield", t)), r -> {});
        try (JournalReader reader = JournalReader.open(dir, "larkfield")) {
            reader.lines(T0, T0.plus(Duration.ofDays(1)), pipeline::accept);
        }
        pipeline.advanceTo(now);
        return lines;
    }
}
