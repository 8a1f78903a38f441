package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.journal.Journal;
import bywash.ingest.journal.JournalReader;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.event.OperatorEntry;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A disk that is full for a while: what happens meanwhile is said not to be kept, waits, and is kept when there is room. */
class FullDiskTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");
    private static final Instant FAR = T0.plus(Duration.ofDays(365));
    private static final long USUAL = 8_000_000;

    @TempDir
    Path dir;

    private Instant now = T0;
    private Journal journal;
    private Station station;
    private final List<String> shown = new ArrayList<>();

    @BeforeEach
    void begin() throws Exception {
        begin(USUAL);
    }

    private void begin(long mayWait) throws Exception {
        if (station != null) {
            station.watch().end();
        }
        var site = Larkfield.site();
        journal = Journal.open(dir, site.site().id(), () -> now);
        station = Station.on(site, dir, WatchRecord.in(journal, mayWait), journal, () -> now);
        station.outlets().add((t, line) -> shown.add(line));
    }

    private void oxygen(double mgL, int minutes) {
        Instant until = now.plus(Duration.ofMinutes(minutes));
        while (now.isBefore(until)) {
            now = now.plusSeconds(10);
            byte[] payload = ("{\"oxygen\":{\"mgl\":" + mgL + "}}").getBytes(StandardCharsets.UTF_8);
            station.watch().step(List.of(new Message(now, "larkfield/do", payload, 0, false)));
        }
    }

    private void fill() {
        journal.limitPages(1); // the pages there are may still be filled
        for (int minute = 0; minute < 60 && journal.state().durable(); minute++) {
            oxygen(7.5, 1);
        }
    }

    private void makeRoom() {
        journal.limitPages(Integer.MAX_VALUE);
    }

    private String note() {
        return station.watch().latest().note();
    }

    private boolean enter(String text) {
        var kept = station.watch().enter(new OperatorEntry.Note(now, text));
        station.watch().step(List.of());
        return kept.join();
    }

    private boolean lowOxygen() {
        return station.watch().latest().snapshot().alarms().stream().anyMatch(a -> a.kind() == AlarmKind.LOW_OXYGEN);
    }

    private List<String> notes() throws Exception {
        try (JournalReader reader = JournalReader.open(dir, "larkfield")) {
            return reader.entries(T0, FAR).stream()
                    .map(e -> ((OperatorEntry.Note) e.entry()).text())
                    .toList();
        }
    }

    private List<String> linesOnRecord() throws Exception {
        try (JournalReader reader = JournalReader.open(dir, "larkfield")) {
            return reader.transitions(T0, FAR);
        }
    }

    @Test
    void whatWaitedIsKeptInOrderWhenThereIsRoomAndTheAlarmIsThereAfterARestart() throws Exception {
        oxygen(7.5, 5);
        assertTrue(enter("before"));
        fill();
        assertFalse(enter("while it was full"));
        oxygen(2, 5);
        assertTrue(lowOxygen(), "the watch goes on");
        assertTrue(note().startsWith("NOT ON DISK: disk full, make room (1 entry, "), note());
        assertTrue(note().contains(" alarm line") && note().endsWith(" messages wait)"), note());
        assertEquals(List.of("before"), notes());
        makeRoom();
        oxygen(2, 1);
        assertEquals("journal works again, all is on disk", note());
        assertEquals(List.of("before", "while it was full"), notes());
        assertEquals(shown, linesOnRecord());
        assertTrue(enter("after"));
        oxygen(2, 61);
        assertEquals("", note(), "said for an hour");
        begin(USUAL);
        assertTrue(lowOxygen(), "not forgotten");
        List<String> replayed = new ArrayList<>();
        Pipeline pipeline = new Pipeline(Larkfield.site(), t -> replayed.add(AlarmLines.of("larkfield", t)), r -> {});
        try (JournalReader reader = JournalReader.open(dir, "larkfield")) {
            assertEquals(0, reader.lines(T0, FAR, pipeline::accept));
        }
        pipeline.advanceTo(now);
        assertEquals(shown, replayed, "the record has all in the order in which it was");
        station.watch().end();
    }

    @Test
    void messagesAreGivenUpFirstAndThatIsSaid() throws Exception {
        begin(40_000);
        fill();
        assertFalse(enter("the only one"));
        oxygen(2, 120);
        assertTrue(note().contains("1 entry, ") && note().endsWith(" messages given up"), note());
        makeRoom();
        oxygen(2, 1);
        assertTrue(note().matches("journal works again, \\d+ messages of that time lost"), note());
        assertEquals(List.of("the only one"), notes());
        assertEquals(shown, linesOnRecord(), "no alarm line is lost");
        assertTrue(station.record().unkept() > 0);
        station.watch().end();
    }

    /** What was never on the disk is gone when the watch dies; what it then knows is what stands there. */
    @Test
    void aWatchThatEndsWhileTheDiskIsFullLosesWhatItSaidWasNotOnTheDisk() throws Exception {
        oxygen(7.5, 5);
        fill();
        oxygen(2, 5);
        assertTrue(note().contains("alarm line"), note());
        begin(USUAL);
        assertFalse(lowOxygen());
        oxygen(2, 5);
        assertTrue(lowOxygen(), "raised anew from what is read now");
        station.watch().end();
    }
}
