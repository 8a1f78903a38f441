package bywash.samples.season;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Entry;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.event.OperatorEntry;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Lines gathered in any order, given out in order of time. */
final class Diary {
    private static final ZoneId ZONE = ZoneId.of("Europe/Dublin");

    private final List<RecordedLine> lines = new ArrayList<>();

    static Instant at(LocalDate day, int hour, int minute) {
        return day.atTime(hour, minute).atZone(ZONE).toInstant();
    }

    void enter(OperatorEntry entry) {
        lines.add(new Entry(entry));
    }

    void message(Instant at, String topic, String payload) {
        lines.add(new Message(at, topic, payload.getBytes(StandardCharsets.UTF_8), 0, false));
    }

    List<RecordedLine> inOrder() {
        List<RecordedLine> sorted = new ArrayList<>(lines);
        sorted.sort(Comparator.comparing(RecordedLine::time));
        return sorted;
    }
}
