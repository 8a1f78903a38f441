package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.journal.Journal;
import bywash.ingest.journal.KeptTransition;
import bywash.ingest.recording.RecordedLine;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry.Note;
import bywash.tui.view.EventLog.Event;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordedEventsTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");

    @TempDir
    Path dir;

    @Test
    void tellsAlarmsEntriesAndUnwatchedTimeInTheirOrder() throws Exception {
        AlarmTransition raised = new AlarmTransition(
                T,
                AlarmKind.UNPLANNED_INFLOW,
                "sump",
                AlarmState.UNACKNOWLEDGED,
                AlarmKind.UNPLANNED_INFLOW.priority(),
                "i",
                "Water nobody declared",
                Map.of("inflow_l_min", 4.1));
        Note note = new Note(T.plusSeconds(60), "shut it");
        try (Journal journal = Journal.open(dir, "larkfield", () -> T)) {
            journal.appendEntry(note);
            journal.appendTransitions(List.of(
                    new KeptTransition(T, AlarmLines.of("larkfield", raised), "unplanned-inflow", "sump", "{}")));
            journal.appendState(new RecordedLine.WatchStarted(T.plusSeconds(300), T.plusSeconds(100)));
        }
        RecordedEvents past = new RecordedEvents(dir, "larkfield");
        List<Event> events = past.between(Instant.MIN, T.plusSeconds(301));
        assertEquals(3, events.size());
        AlarmTransition read =
                assertInstanceOf(Event.Alarm.class, events.get(0)).transition();
        assertEquals(
                AlarmLines.of("larkfield", raised).replaceAll("\"values\":.*", ""),
                AlarmLines.of("larkfield", read).replaceAll("\"values\":.*", ""));
        assertEquals(new Event.Entry(note), events.get(1));
        assertEquals(new Event.Unwatched(T.plusSeconds(300), T.plusSeconds(100)), events.get(2));
        assertEquals(List.of(), past.between(T.plusSeconds(1), T.plusSeconds(60)));
        assertEquals("The journal begins here.", past.beginning());
    }

    @Test
    void saysWhenTheJournalCannotBeRead() {
        RecordedEvents past = new RecordedEvents(dir.resolve("none"), "larkfield");
        assertEquals(List.of(), past.between(Instant.MIN, T));
        assertTrue(past.beginning().startsWith("What was before cannot be shown: no journal of larkfield"));
    }
}
