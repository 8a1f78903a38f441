package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.rules.event.CalibrationPoint;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.MaintenanceEnd;
import bywash.rules.event.OperatorEntry.MaintenanceStart;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.husbandry.probes.ProbeCareStatus;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.husbandry.stock.GrowthPeriod;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Twenty days of a season: whether the watch was started anew meanwhile, no figure of the books tells. */
final class SeasonFiguresAfterRestartTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");
    private static final int DAYS = 20;
    private static final Duration STEP = Duration.ofMinutes(20);
    private static final Pattern NUMBER = Pattern.compile("-?\\d+\\.\\d+(E-?\\d+)?");

    private static final String SITE = """
            name: Test house
            id: house
            time-zone: Europe/Dublin
            stocking: fish
            broker: {url: "mqtt://127.0.0.1:1883"}
            mains: {disinfectant: chlorine, residual: 0.9 mg/L, ph: 7.9, alkalinity: 120 mg/L, temperature: 11 Cel}
            vessels:
              sump:      {role: sump, volume: 600 L}
              fish-tank: {role: fish-tank, volume: 1500 L}
            probes:
              - {id: ph,   vessel: fish-tank, quantity: ph,               topic: t/ph,   payload: number, every: 20 min}
              - {id: temp, vessel: fish-tank, quantity: temperature,      topic: t/temp, payload: number, unit: Cel, every: 20 min}
              - {id: oxy,  vessel: fish-tank, quantity: dissolved-oxygen, topic: t/oxy,  payload: number, unit: mg/L, every: 20 min}
            """;

    /** @param enteredAt when it is typed, which may be later than its own time */
    private record Typed(Instant enteredAt, OperatorEntry entry) {}

    @TempDir
    Path dir;

    private Instant now = T0;

    private static Instant at(double days) {
        return T0.plusSeconds(Math.round(days * 86_400));
    }

    private static List<Typed> entries() {
        List<Typed> all = new ArrayList<>();
        for (int day = 0; day < DAYS; day++) {
            add(all, new Feed(at(day + 0.1), 60 + day, 0.32));
        }
        add(all, new FishIn(at(0.01), "spring", "nile-tilapia", 60, 100));
        add(all, new Weigh(at(6.3), "spring", false, 5, 5 * 112.0, List.of(100.0, 105.0, 112.0, 118.0, 125.0)));
        add(all, new Weigh(at(12.4), "spring", true, 60, 60 * 121.0, List.of()));
        add(all, new WaterTest(at(1.2), "fish-tank", "total-ammonia", 0.3));
        add(all, new WaterTest(at(1.21), "fish-tank", "nitrite", 0.2));
        add(all, new MaintenanceStart(at(3), "ph", Duration.ofHours(2), "into buffers"));
        add(all, new MaintenanceEnd(at(3 + 1 / 24.0), "ph"));
        add(all, new Calibrate(at(3 + 1 / 24.0), "ph", "", points(6.86, 6.9, 4.01, 4.0), 25));
        for (double day : new double[] {4.2, 5.2, 6.2, 9.5, 16.1}) {
            add(all, new WaterTest(at(day).plusSeconds(37), "fish-tank", "ph", 6.6));
            add(all, new WaterTest(at(day).plusSeconds(37), "fish-tank", "dissolved-oxygen", 7));
            add(all, new WaterTest(at(day).plusSeconds(37), "fish-tank", "temperature", 24));
        }
        all.add(new Typed(at(4.4), new WaterTest(at(4.1), "fish-tank", "ph", 6.7)));
        all.add(new Typed(at(8), new WaterTest(at(4.5), "fish-tank", "ph", 6.5)));
        all.add(new Typed(at(8), new Weigh(at(2.7), "spring", true, 60, 60 * 104.0, List.of())));
        all.add(new Typed(at(9.6), new WaterTest(at(6.9), "fish-tank", "total-ammonia", 0.4)));
        add(all, new Withdraw(at(14), "test", at(5.2).plusSeconds(37), 1, "wrong cup"));
        all.sort((a, b) -> a.enteredAt().compareTo(b.enteredAt()));
        return all;
    }

    private static List<CalibrationPoint> points(double... standardsAndReadings) {
        List<CalibrationPoint> points = new ArrayList<>();
        for (int i = 0; i < standardsAndReadings.length; i += 2) {
            points.add(new CalibrationPoint(standardsAndReadings[i], "pH", standardsAndReadings[i + 1], "pH"));
        }
        return points;
    }

    private static void add(List<Typed> all, OperatorEntry entry) {
        all.add(new Typed(entry.at(), entry));
    }

    private static double wave(Instant at, double mean, double swing) {
        return mean
                + swing * StrictMath.sin(2 * StrictMath.PI * at.getEpochSecond() / 86_400)
                + at.getEpochSecond() % 4001 / 40_000.0;
    }

    private static List<Message> readings(Instant from) {
        List<Message> all = new ArrayList<>();
        boolean buffers = !from.isBefore(at(3)) && from.isBefore(at(3 + 1 / 24.0));
        for (int s : new int[] {10, 40}) {
            Instant at = from.plusSeconds(s);
            add(all, at, "ph", buffers ? 4.0 : wave(at, 6.8, 0.1));
            add(all, at, "oxy", wave(at, 7, 0.8));
            add(all, at, "temp", from.equals(at(2)) ? 85 : wave(at, 24, 1));
        }
        return all;
    }

    private static void add(List<Message> all, Instant at, String probe, double value) {
        String text = String.valueOf(Math.round(value * 1000) / 1000.0);
        all.add(new Message(at, "t/" + probe, text.getBytes(StandardCharsets.UTF_8), 0, false));
    }

    private static SiteFile site() {
        if (SiteFileReader.read(SITE, "site.yaml") instanceof SiteFileResult.Good good) {
            return good.siteFile();
        }
        throw new AssertionError(SiteFileReader.read(SITE, "site.yaml"));
    }

    private List<SeasonStatus> play(Path state, List<Instant> restarts) throws Exception {
        now = T0;
        List<SeasonStatus> seen = new ArrayList<>();
        List<Typed> entries = new ArrayList<>(entries());
        List<Instant> stops = new ArrayList<>(restarts);
        Station station = Station.open(site(), state, () -> now);
        for (Instant step = T0; step.isBefore(at(DAYS)); step = step.plus(STEP)) {
            now = step.plusSeconds(45);
            station.watch().step(readings(step));
            while (!entries.isEmpty() && entries.get(0).enteredAt().isBefore(step.plus(STEP))) {
                now = entries.get(0).enteredAt().isAfter(now) ? entries.get(0).enteredAt() : now;
                station.watch().enter(entries.remove(0).entry());
                station.watch().step(List.of());
            }
            if (!stops.isEmpty() && !step.isBefore(stops.get(0))) {
                stops.remove(0);
                station.watch().end();
                now = now.plusSeconds(5);
                station = Station.open(site(), state, () -> now);
                station.watch().step(List.of());
            }
            if (step.equals(at(11)) || step.equals(at(15)) || step.equals(at(DAYS).minus(STEP))) {
                seen.add(season(station));
            }
        }
        station.watch().end();
        return seen;
    }

    private static SeasonStatus season(Station station) {
        SeasonStatus season = station.watch().latest().snapshot().season();
        assertNotNull(season);
        return season;
    }

    /** The same but for the last digits of sums that were added up in another order. */
    private static void assertSame(Object expected, Object actual) {
        String a = expected.toString();
        String b = actual.toString();
        assertEquals(NUMBER.matcher(a).replaceAll("#"), NUMBER.matcher(b).replaceAll("#"));
        Matcher first = NUMBER.matcher(a);
        Matcher second = NUMBER.matcher(b);
        while (first.find() && second.find()) {
            double x = Double.parseDouble(first.group());
            String around = a.substring(Math.max(0, first.start() - 60), first.end());
            assertEquals(x, Double.parseDouble(second.group()), 1e-9 * Math.max(1, Math.abs(x)), around);
        }
    }

    @Test
    void everyFigureIsThatOfAWatchThatNeverStopped() throws Exception {
        List<SeasonStatus> unbroken = play(dir.resolve("one"), List.of());
        List<SeasonStatus> restarted = play(dir.resolve("two"), List.of(at(10.4), at(14.7)));
        assertEquals(unbroken.size(), restarted.size());
        for (int i = 0; i < unbroken.size(); i++) {
            SeasonStatus one = unbroken.get(i);
            SeasonStatus two = restarted.get(i);
            assertSame(one.cohorts(), two.cohorts());
            assertSame(one.probes(), two.probes());
            assertSame(one, two);
        }
    }

    /** Else the comparison above would hold of books that take nothing from the probes. */
    @Test
    void theFiguresComeFromTheProbes() throws Exception {
        SeasonStatus end = play(dir.resolve("three"), List.of(at(10.4))).get(2);
        List<GrowthPeriod> periods = end.cohorts().get(0).periods();
        assertEquals(3, periods.size());
        for (GrowthPeriod p : periods) {
            double days = Duration.between(p.from(), p.to()).toSeconds() / 86_400.0;
            assertEquals(24.05 * days, p.growth().degreeDays(), 0.4 * days);
            assertTrue(p.growth().thermalCoefficient() > 0);
        }
        ProbeCareStatus ph = end.probes().stream()
                .filter(p -> p.probe().equals("ph"))
                .findFirst()
                .orElseThrow();
        assertEquals(5, ph.differences().size(), "the late one counts, one too late and one taken back do not");
        assertTrue(ph.differences().stream().allMatch(d -> d.difference() > 0 && d.difference() < 0.4), ph.toString());
        assertNotNull(end.feed().recent());
    }
}
