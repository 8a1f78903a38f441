package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.rules.chlorine.BatchView;
import bywash.rules.chlorine.BatchView.Safety;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.water.Dechlorinator;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Four days of chloramine, which does not clear by itself: on the first a reserve is tested free of it, then it is filled up
 * without an entry, and mains water runs into the system. A watch that stops on the fourth, when none of these readings are played
 * again, says the same afterwards as one that never stopped.
 */
class ChlorineAfterRestartTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");
    private static final int STOP = 3 * 1440 + 17 * 60 + 25;
    private static final int END = STOP + 125;
    private static final String SITE = """
            name: Four days
            id: days
            time-zone: Europe/Dublin
            elevation: 85 m
            stocking: fish
            units: metric
            broker: {url: "mqtt://127.0.0.1:1883"}
            mains: {disinfectant: chloramine, residual: 2.0 mg/L, ph: 7.9, alkalinity: 120 mg/L, temperature: 11 Cel}
            vessels:
              sump:      {role: sump, shape: {kind: box, length: 1.0 m, width: 1.0 m, height: 1.0 m}, overflow: 0.9 m}
              fish-tank: {role: fish-tank, volume: 1500 L}
              reserve:   {role: reserve, shape: {kind: box, length: 1.0 m, width: 1.0 m, height: 1.0 m}, overflow: 0.9 m, feeds: sump}
            probes:
              - {id: sump-level, vessel: sump, quantity: level, topic: days/sump, payload: number, unit: cm, every: 60 s}
              - {id: reserve-level, vessel: reserve, quantity: level, topic: days/reserve, payload: number, unit: cm, every: 60 s}
            """;

    @TempDir
    Path dir;

    private final SiteFile site = ((SiteFileResult.Good) SiteFileReader.read(SITE, "days")).siteFile();
    private final List<OperatorEntry> entered = new ArrayList<>();
    private Instant now = T0;
    private @Nullable Station opened;

    private Station station() {
        return Objects.requireNonNull(opened);
    }

    private interface Chore {
        void at(int minute);
    }

    /** Plays it, stopping once or not, and returns what stands in the end. */
    private void play(String name, boolean stops, Chore chore) throws Exception {
        Path state = dir.resolve(name);
        SplittableRandom noise = new SplittableRandom(11);
        now = T0;
        opened = Station.open(site, state, () -> now);
        for (int minute = 0; minute < END; minute++) {
            now = T0.plusSeconds(60L * minute);
            double sumpMm = 300 + 200 * share(minute, 600, 120) + noise.nextDouble(-1.5, 1.5);
            double reserveMm = 300 + 200 * share(minute, 300, 60) + noise.nextDouble(-1.5, 1.5);
            station().watch().step(List.of(message("days/sump", sumpMm), message("days/reserve", reserveMm)));
            chore.at(minute);
            if (stops && minute == STOP) {
                station().watch().end();
                opened = Station.open(site, state, () -> now);
            }
        }
    }

    private static double share(double minute, double from, double length) {
        return Math.max(0, Math.min(1, (minute - from) / length));
    }

    private Message message(String topic, double mm) {
        byte[] text = String.format(Locale.ROOT, "%.2f", mm / 10).getBytes(StandardCharsets.UTF_8);
        return new Message(now, topic, text, 0, false);
    }

    private void enter(OperatorEntry entry) {
        station().watch().enter(entry);
        station().watch().step(List.of());
        entered.add(entry);
    }

    private BatchView batch() {
        return station().watch().latest().snapshot().care().batches().get(0);
    }

    private ResidualEstimate residual() {
        return station().watch().latest().snapshot().residual();
    }

    private void testedOnTheFirstDay(int minute) {
        if (minute == 60) {
            enter(new WaterTest(now, "reserve", "total-chlorine", 0));
        }
    }

    @Test
    void aFillingThatNobodyEnteredIsKnownAfterwards() throws Exception {
        play("straight", false, this::testedOnTheFirstDay);
        BatchView straight = batch();
        play("broken", true, this::testedOnTheFirstDay);
        BatchView broken = batch();
        assertEquals(Safety.NEVER, straight.safety());
        assertEquals(Safety.NEVER, broken.safety(), "chloramine that only stands");
        assertFalse(station().watch().latest().safeReserves().contains("reserve"));
        assertNotNull(broken.filledAt());
        assertEquals(straight.filledAt(), broken.filledAt());
        assertTrue(straight.residual().likelyMgL() > 0.5, straight.toString());
        assertEquals(straight.residual().highMgL(), broken.residual().highMgL(), 1e-9);
        assertEquals(straight.residual().likelyMgL(), broken.residual().likelyMgL(), 1e-9);
        assertEquals(straight.residual().lowMgL(), broken.residual().lowMgL(), 1e-9);
    }

    @Test
    void whatCameIntoTheSystemIsNotForgottenAndADoseCanStillBeTakenBack() throws Exception {
        play("straight", false, minute -> {});
        ResidualEstimate straight = residual();
        play("broken", true, minute -> {});
        assertTrue(straight.highUgL() > 19, straight.toString());
        same(straight, residual());
        play("dosed", true, this::dosed);
        ResidualEstimate dosed = residual();
        assertTrue(dosed.probability() < 0.5 * straight.probability(), dosed + " with, without " + straight);
        play("undone", true, minute -> {
            dosed(minute);
            if (minute == STOP + 60) {
                OperatorEntry dose = entered.get(entered.size() - 1);
                enter(new Withdraw(now, "dose", dose.at(), 1, "not given"));
            }
        });
        same(straight, residual());
    }

    /** One of them may have been reckoned up to a minute after the other. */
    private static void same(ResidualEstimate straight, ResidualEstimate other) {
        assertEquals(straight.highUgL(), other.highUgL(), 1e-4 * straight.highUgL());
        assertEquals(straight.likelyUgL(), other.likelyUgL(), 1e-2 * straight.likelyUgL());
        assertEquals(straight.probability(), other.probability(), 1e-3);
    }

    /** Some hours later, so much that it takes all. */
    private void dosed(int minute) {
        if (minute == 16 * 60) {
            enter(new Dose(now, "fish-tank", Dechlorinator.ASCORBIC_ACID.word(), 20));
        }
    }
}
