package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.alarm.AlarmView;
import bywash.rules.event.OperatorEntry;
import bywash.samples.SampleRecordings;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A watch that was stopped and started goes on as if it had not been. */
class RestartTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");

    @TempDir
    Path dir;

    private Instant now = T0;

    private Station open(Path state) throws Exception {
        return Station.open(Larkfield.site(), state, () -> now);
    }

    private static void close(Station station) {
        station.watch().end();
    }

    private static List<String> alarms(Station station) {
        return station.watch().latest().snapshot().alarms().stream()
                .map(RestartTest::words)
                .toList();
    }

    private static String words(AlarmView a) {
        return a.kind() + " " + a.subject() + " " + a.state() + " " + a.incident() + " " + a.since();
    }

    /** Every alarm line, with and without a restart each 37 minutes. */
    @ParameterizedTest
    @EnumSource(
            value = SampleRecordings.class,
            names = {"VALVE_OPEN", "TOP_UP_DRIBBLING"})
    void raisesAfterRestartsWhatItRaisesWithoutThem(SampleRecordings sample) throws Exception {
        List<String> straight = new ArrayList<>();
        List<String> broken = new ArrayList<>();
        String one = play(sample, dir.resolve("one"), Duration.ofDays(1), straight);
        String other = play(sample, dir.resolve("other"), Duration.ofMinutes(37), broken);
        assertEquals(one, other);
        assertFalse(straight.isEmpty());
        assertEquals(straight, broken);
    }

    private String play(SampleRecordings sample, Path state, Duration restartEvery, List<String> changes)
            throws Exception {
        now = SampleRecordings.start();
        Station station = open(state);
        station.outlets().add((t, line) -> changes.add(change(t)));
        Instant next = now.plus(restartEvery);
        var site = sample.simulation();
        for (RecordedLine line = site.next(); line != null; line = site.next()) {
            now = line.time();
            if (now.isAfter(next)) {
                close(station);
                station = open(state);
                station.outlets().add((t, l) -> changes.add(change(t)));
                next = now.plus(restartEvery);
            }
            step(station, line);
        }
        now = now.plusSeconds(10);
        station.watch().step(List.of());
        String end = alarms(station) + " " + station.watch().latest().snapshot().topUp();
        close(station);
        return end;
    }

    private static String change(AlarmTransition t) {
        return t.at() + " " + t.kind() + " " + t.subject() + " " + t.state() + " " + t.incident();
    }

    private static void step(Station station, RecordedLine line) {
        if (line instanceof Message message) {
            station.watch().step(List.of(message));
        } else if (line instanceof RecordedLine.Entry entry) {
            station.watch().enter(entry.entry());
            station.watch().step(List.of());
        }
    }

    private void message(Station station, String topic, String payload) {
        station.watch().step(List.of(new Message(now, topic, payload.getBytes(StandardCharsets.UTF_8), 0, false)));
    }

    private void enter(Station station, OperatorEntry entry) {
        station.watch().enter(entry);
        station.watch().step(List.of());
    }

    /** Warm, low in oxygen, and a probe on the shelf; then five days of readings that keep it so. */
    private Station fiveDays(Path state) throws Exception {
        Station station = open(state);
        enter(station, new OperatorEntry.BatchFill(now, "reserve", 800));
        enter(station, new OperatorEntry.WaterTest(now, "reserve", "total-chlorine", 0));
        Instant end = T0.plus(Duration.ofDays(5));
        while (now.isBefore(end)) {
            message(station, "larkfield/do", "{\"oxygen\":{\"mgl\":" + (2 + now.getEpochSecond() % 7 / 10.0) + "}}");
            if (now.equals(T0.plusSeconds(600))) {
                enter(station, new OperatorEntry.Acknowledge(now, "low-oxygen", "fish-tank"));
                enter(station, new OperatorEntry.Shelve(now, "probe-silent", "fish-orp", Duration.ofDays(30)));
            }
            now = now.plusSeconds(now.isBefore(T0.plusSeconds(1200)) ? 30 : 300);
        }
        return station;
    }

    @Test
    void bringsBackWhatIsOlderThanTheDaysPlayedAgain() throws Exception {
        Station station = fiveDays(dir);
        List<String> before = alarms(station);
        String oxygen = before.stream()
                .filter(a -> a.startsWith("LOW_OXYGEN"))
                .findFirst()
                .orElseThrow();
        assertTrue(oxygen.contains(" ACKNOWLEDGED ") && oxygen.contains("2026-05-04"), oxygen);
        assertTrue(before.stream().anyMatch(a -> a.startsWith("PROBE_SILENT fish-orp SHELVED")), before::toString);
        assertEquals(java.util.Set.of("reserve"), station.watch().latest().safeReserves());
        close(station);

        now = now.plus(Duration.ofHours(2));
        Station again = open(dir);
        again.watch().step(List.of());
        assertEquals(before, alarms(again));
        assertEquals(java.util.Set.of("reserve"), again.watch().latest().safeReserves());
        assertEquals("not watched 06:55 to 09:00", again.watch().latest().note());
        close(again);
    }

    @Test
    void doesNotCryOfSilenceWhileNobodyListened() throws Exception {
        Station station = open(dir);
        message(station, "larkfield/orp", "300");
        close(station);
        now = now.plus(Duration.ofHours(5));
        List<AlarmTransition> news = new ArrayList<>();
        Station again = open(dir);
        again.outlets().add((t, line) -> news.add(t));
        now = now.plusSeconds(20);
        message(again, "larkfield/orp", "301");
        now = now.plusSeconds(20);
        message(again, "larkfield/orp", "302");
        assertEquals(List.of(), news);
        for (int i = 0; i < 5; i++) {
            now = now.plusSeconds(20);
            again.watch().step(List.of());
        }
        assertTrue(news.stream().anyMatch(t -> t.subject().equals("fish-do")), "silent since the watch began");
        close(again);
    }

    @Test
    void endsShelvingThatRanOutWhileNobodyWatched() throws Exception {
        Station station = open(dir);
        message(station, "larkfield/do", "{\"oxygen\":{\"mgl\":2}}");
        now = now.plusSeconds(40);
        message(station, "larkfield/do", "{\"oxygen\":{\"mgl\":2.1}}");
        now = now.plusSeconds(10);
        enter(station, new OperatorEntry.Shelve(now, "low-oxygen", "fish-tank", Duration.ofHours(1)));
        now = now.plusSeconds(10);
        station.watch().step(List.of());
        assertEquals(
                AlarmState.SHELVED,
                station.watch().latest().snapshot().alarms().get(0).state());
        close(station);
        now = now.plus(Duration.ofHours(3));
        List<AlarmTransition> news = new ArrayList<>();
        Station again = open(dir);
        again.outlets().add((t, line) -> news.add(t));
        now = now.plusSeconds(10);
        again.watch().step(List.of());
        assertEquals(AlarmState.UNACKNOWLEDGED, news.get(0).state());
        close(again);
    }
}
