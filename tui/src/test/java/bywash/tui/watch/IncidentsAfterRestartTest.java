package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.rules.engine.CareStatus;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.Note;
import bywash.rules.event.OperatorEntry.StepDone;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.recovery.FeedStage;
import bywash.rules.response.ResponseSheet;
import bywash.tui.sheet.SheetFormat;
import bywash.tui.view.Frame;
import bywash.tui.view.Losses;
import bywash.tui.view.RecoveryText;
import bywash.tui.view.SheetView;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Three weeks with two incidents of mains water, one of water lost and one that stands for days: a watch that was stopped and
 * killed in between shows the same sheets and the same way back, each day, as one that never stopped.
 */
class IncidentsAfterRestartTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");
    private static final String SITE = """
            name: Three weeks
            id: weeks
            time-zone: Europe/Dublin
            elevation: 85 m
            stocking: fish
            units: metric
            broker: {url: "mqtt://127.0.0.1:1883"}
            mains: {disinfectant: chlorine, residual: 0.9 mg/L, ph: 7.9, alkalinity: 120 mg/L, temperature: 11 Cel}
            vessels:
              sump:      {role: sump, shape: {kind: box, length: 1.0 m, width: 1.0 m, height: 1.0 m}, overflow: 0.9 m}
              fish-tank: {role: fish-tank, volume: 1500 L}
            probes:
              - {id: sump-level, vessel: sump, quantity: level, topic: weeks/sump, payload: number, unit: cm, every: 60 s}
              - {id: fish-ph, vessel: fish-tank, quantity: ph, topic: weeks/ph, payload: number, every: 60 s}
            """;

    @TempDir
    Path dir;

    private final SiteFile site = ((SiteFileResult.Good) SiteFileReader.read(SITE, "weeks")).siteFile();
    private Instant now = T0;
    private Path state = Path.of("");
    private @Nullable Station opened;
    private SplittableRandom noise = new SplittableRandom(11);
    private boolean brim;

    private enum End {
        STOP,
        KILL
    }

    /** Height above the floor, mm: two hours of inflow at noon of days 1 and 3, lost again later; at its brim from day 4 on where that is wanted. */
    private double levelMm(double hours) {
        double mm = 300;
        for (int day : List.of(1, 3)) {
            mm += 200 * share(hours, day * 24 + 6, 2) - 200 * share(hours, day * 24 + 10, 2);
        }
        return mm + (brim ? 560 : 0) * share(hours, 4 * 24 + 3, 3);
    }

    private static double share(double hours, double from, double length) {
        return Math.max(0, Math.min(1, (hours - from) / length));
    }

    /** What is shown of incidents, at noon of each day. */
    private Map<Integer, List<String>> play(String name, int days, Map<Integer, End> ends) throws Exception {
        now = T0;
        noise = new SplittableRandom(11);
        state = dir.resolve(name);
        open();
        Map<Integer, List<String>> shown = new TreeMap<>();
        for (int minute = 0; minute < days * 1440; minute++) {
            now = T0.plusSeconds(60L * minute);
            minute(minute);
            int day = minute / 1440;
            if (minute % 1440 == 360) {
                chores(day);
                now = now.plusSeconds(4);
                station().watch().step(List.of());
                shown.put(day, shown());
            }
            if (minute % 1440 == 200 && ends.containsKey(day)) {
                again(ends.get(day), name + day);
                shown.put(1000 + day, shown());
            } else if (minute % 1440 == 200) {
                shown.put(1000 + day, shown());
            }
        }
        station().watch().end();
        return shown;
    }

    private void open() throws Exception {
        opened = Station.open(site, state, () -> now);
    }

    private Station station() {
        return Objects.requireNonNull(opened);
    }

    private void again(End end, String name) throws Exception {
        if (end == End.STOP) {
            station().watch().end();
        } else {
            Path copy = dir.resolve(name);
            CrashedFiles.killed(state, copy);
            station().watch().end();
            state = copy;
        }
        open();
    }

    private void minute(int minute) {
        double mm = levelMm(minute / 60.0) + noise.nextDouble(-1.5, 1.5);
        String level = String.format(Locale.ROOT, "%.2f", mm / 10);
        String ph = String.format(Locale.ROOT, "%.2f", 6.8 + 0.002 * (minute % 17));
        station().watch().step(List.of(message("weeks/sump", level), message("weeks/ph", ph)));
    }

    private Message message(String topic, String payload) {
        return new Message(now, topic, payload.getBytes(StandardCharsets.UTF_8), 0, false);
    }

    private void enter(OperatorEntry entry) {
        now = now.plusMillis(7);
        station().watch().enter(entry);
        station().watch().step(List.of());
    }

    private void chores(int day) {
        enter(new Acknowledge(now, null, null));
        enter(new WaterTest(now, "fish-tank", "total-ammonia", day == 11 ? 1.4 : 0.2));
        enter(new WaterTest(now, "fish-tank", "nitrite", 0.1));
        if (day == 5 || day == 13) {
            enter(new WaterTest(now, "fish-tank", "total-chlorine", 0));
            enter(new WaterTest(now, "fish-tank", "total-chlorine", 0));
        }
        enter(new Feed(now, 80, 0.35));
        if (day % 4 == 2 && !care().sheets().isEmpty()) {
            String incident = care().sheets().get(0).incident();
            enter(new StepDone(now, incident, "stop-water", "shut by hand on day " + day));
            enter(new Note(now, "looked at on day " + day));
        }
    }

    private CareStatus care() {
        return station().watch().latest().snapshot().care();
    }

    private List<String> shown() {
        FrameSource latest = station().watch().latest();
        Frame frame = new Frame(
                latest.snapshot(),
                station().past().trends(),
                station().past().log(),
                latest.now(),
                Losses.NONE,
                latest.safeReserves(),
                "");
        List<String> words = new ArrayList<>();
        words.add(String.valueOf(care().recovery()));
        RecoveryText.from(frame).forEach(p -> words.add(p.toString()));
        care().sheets().forEach(sheet -> {
            if (sheet.ended() == null) {
                standing(sheet, words);
                return;
            }
            words.addAll(SheetFormat.TEXT
                    .write(sheet, site.site().timeZone())
                    .lines()
                    .toList());
            SheetView.from(sheet, 1, frame).forEach(p -> words.add(p.toString()));
        });
        return words;
    }

    /** All but the residual of the moment and what follows from it: that is reckoned from the days played again. */
    private static void standing(ResponseSheet sheet, List<String> words) {
        words.add(sheet.incident() + " " + sheet.began());
        words.addAll(sheet.water());
        sheet.events().forEach(e -> words.add(e.toString()));
        sheet.steps().forEach(step -> words.add(step.id() + " " + step.doneAt() + " " + step.note()));
    }

    private void same(int days, Map<Integer, End> ends) throws Exception {
        Map<Integer, List<String>> straight = play("straight", days, Map.of());
        Map<Integer, List<String>> broken = play("broken", days, ends);
        straight.forEach((day, words) -> {
            List<String> other = Objects.requireNonNull(broken.get(day));
            for (int i = 0; i < Math.min(words.size(), other.size()); i++) {
                assertEquals(words.get(i), other.get(i), "day " + day);
            }
            assertEquals(words.size(), other.size(), "day " + day);
        });
    }

    @Test
    void aWeekOldIncidentStandsAsItDid() throws Exception {
        same(8, Map.of(6, End.STOP, 7, End.KILL));
        List<ResponseSheet> sheets = care().sheets();
        assertTrue(sheets.get(sheets.size() - 1).began().isBefore(T0.plus(Duration.ofDays(2))), sheets::toString);
        assertEquals(
                FeedStage.THREE_QUARTERS,
                Objects.requireNonNull(care().recovery()).feed(),
                "it is a long way back");
    }

    @ParameterizedTest(name = "one stands from day 4 on: {0}")
    @ValueSource(booleans = {false, true})
    @Tag("slow")
    void threeWeeksOfIncidentsStandAsTheyDid(boolean stands) throws Exception {
        brim = stands;
        same(21, Map.of(6, End.STOP, 8, End.KILL, 12, End.STOP, 13, End.KILL, 18, End.KILL, 20, End.STOP));
        assertTrue(care().sheets().size() >= 2, () -> "sheets " + care().sheets());
        assertEquals(stands, care().sheets().get(0).ended() == null);
    }
}
