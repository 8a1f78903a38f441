package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.feed.SteadyClock;
import bywash.ingest.mqtt.FeedState;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmView;
import bywash.rules.event.OperatorEntry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The whole watch, loop, rules and journal, through an hour and more of everything that goes wrong: lost brokers, lines that
 * fall silent without a word, old values sent again, doubled, swapped and spoilt messages, floods, clock steps, kills. The
 * seed is in the test's name; more of them with {@code -Dsimulation.seeds=1000}.
 */
class FaultSimulationTest {
    private static final Instant START = Instant.parse("2026-05-04T06:00:00Z");
    private static final int ROUNDS = 240;
    /** How long after its last word a probe may be silent before an alarm must stand. */
    private static final Duration NOTICED = Duration.ofMinutes(3);

    @TempDir
    Path dir;

    private final List<OperatorEntry> kept = new ArrayList<>();
    /** The machine's clock, which may be set; and the evenly running one. */
    private Instant wall = START;

    private long nanos;
    private final SteadyClock clock = new SteadyClock(() -> wall, () -> nanos);
    private Instant now = START;
    private Instant listeningSince = START;
    private boolean linkUp;
    private Instant linkChanged = START;
    private int lives;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, Integer.getInteger("simulation.seeds", 25));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void nothingShownIsLostAndNoSilenceIsReadAsAllWell(long seed) throws Exception {
        FaultyWorld world = new FaultyWorld(seed);
        Path state = dir.resolve("life" + lives);
        Station station = begin(state);
        Instant linkBack = START;
        for (int round = 0; round < ROUNDS; round++) {
            pass(Duration.ofSeconds(10));
            if (world.oneIn(80)) {
                setClock(world.between(-600, 600));
            }
            if (world.oneIn(90)) {
                Path next = dir.resolve("life" + ++lives);
                station = killedOrStopped(world, station, state, next);
                state = next;
                linkBack = now;
            }
            if (!linkUp && !now.isBefore(linkBack)) {
                link(station, true);
                world.retained(now).forEach(station.queue()::offer);
            } else if (linkUp && world.oneIn(60)) {
                link(station, false);
                linkBack = now.plus(world.between(20, 400));
            }
            happen(world, station);
            if (linkUp) {
                world.arriving(now).forEach(station.queue()::offer);
            }
            step(station);
            noSilenceIsReadAsAllWell(station);
        }
        station.watch().end();
        everyEntryIsOnTheRecord(state);
    }

    private void pass(Duration time) {
        wall = wall.plus(time);
        nanos += time.toNanos();
        now = clock.instant();
    }

    /** Somebody, or something, sets the machine's clock; set forward, nobody has watched the time between. */
    private void setClock(Duration by) {
        wall = wall.plus(by);
        Instant before = now;
        now = clock.instant();
        if (now.isAfter(before)) {
            listeningSince = now;
        }
    }

    private Station begin(Path state) throws Exception {
        Station station = Station.open(Larkfield.site(), state, clock);
        listeningSince = now;
        linkUp = false;
        step(station);
        return station;
    }

    private void step(Station station) throws InterruptedException {
        List<Message> batch = new ArrayList<>();
        if (station.queue().counts().waiting() > 0) {
            station.queue().drain(batch, 0);
        }
        station.watch().step(batch);
        var counts = station.queue().counts();
        assertEquals(0, counts.waiting());
        assertEquals(0, counts.dropped(), "nothing was over the queue's bound here");
    }

    private void link(Station station, boolean up) {
        linkUp = up;
        linkChanged = now;
        station.watch()
                .feed(new FeedState(
                        up ? FeedState.Phase.UP : FeedState.Phase.LOST, up ? "connected" : "broker gone", now));
        if (up) {
            listeningSince = now;
        }
    }

    private void happen(FaultyWorld world, Station station) {
        if (world.oneIn(40)) {
            world.newManners();
        }
        if (world.oneIn(50)) {
            world.muteOne(now.plus(world.between(60, 600)));
        }
        if (world.oneIn(120)) {
            world.muteAll(now.plus(world.between(60, 300)));
        }
        if (world.oneIn(150)) {
            world.flood(now).forEach(station.queue()::offer);
        }
        if (world.oneIn(15)) {
            enter(world, station);
        }
    }

    private void enter(FaultyWorld world, Station station) {
        OperatorEntry entry = switch (world.random.nextInt(6)) {
            case 0, 1 -> new OperatorEntry.Acknowledge(now, null, null);
            case 2 -> new OperatorEntry.TopUpStart(now, "sump", "mains", 60, Duration.ofMinutes(10));
            case 3 -> new OperatorEntry.TopUpEnd(now, "sump");
            case 4 -> new OperatorEntry.WaterTest(now, "fish-tank", "nitrite", world.random.nextInt(3));
            default -> new OperatorEntry.Note(now, "note " + world.random.nextInt(1000));
        };
        CompletableFuture<Boolean> done = station.watch().enter(entry);
        done.thenAccept(durable -> {
            if (durable) {
                kept.add(entry);
            }
        });
    }

    /** A kill leaves the files as they are at that moment: they are copied, and the copy is what the next watch finds. */
    private Station killedOrStopped(FaultyWorld world, Station station, Path state, Path next) throws Exception {
        Set<String> standing = acknowledgedLately() ? Set.of() : standing(station);
        boolean killed = world.oneIn(2);
        if (!killed) {
            station.watch().end();
        }
        copy(state, next);
        if (killed) {
            station.watch().end();
        }
        pass(world.between(1, 900));
        Station again = begin(next);
        Set<String> lost = new TreeSet<>(standing);
        lost.removeAll(standing(again));
        assertEquals(
                Set.of(),
                lost,
                (killed ? "killed" : "stopped") + " before " + now + ", of " + standing + " have " + standing(again));
        return again;
    }

    /** What is entered takes effect in its turn of event time, a step later; then fewer may wait than were shown. */
    private boolean acknowledgedLately() {
        return kept.stream()
                .anyMatch(e -> e instanceof OperatorEntry.Acknowledge
                        && Duration.between(e.at(), now).toSeconds() <= 20);
    }

    private static void copy(Path from, Path to) throws IOException {
        Files.createDirectories(to);
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.sorted().toList()) {
                Files.copy(file, to.resolve(file.getFileName().toString()));
            }
        }
    }

    /** Alarms that wait for the grower; what has returned to normal meanwhile must still be there to be acknowledged. */
    private static Set<String> standing(Station station) {
        Set<String> names = new TreeSet<>();
        for (AlarmView alarm : station.watch().latest().snapshot().alarms()) {
            boolean waits = switch (alarm.state()) {
                case UNACKNOWLEDGED, RETURNED_UNACKNOWLEDGED, SHELVED -> true;
                case ACKNOWLEDGED, NORMAL, SUPPRESSED, OUT_OF_SERVICE -> false;
            };
            if (waits) {
                names.add(alarm.kind() + " " + alarm.subject());
            }
        }
        return names;
    }

    private void noSilenceIsReadAsAllWell(Station station) {
        var snapshot = station.watch().latest().snapshot();
        if (Duration.between(listeningSince, now).compareTo(NOTICED) <= 0 && linkUp) {
            return;
        }
        boolean feedAlarm = snapshot.alarms().stream().anyMatch(a -> a.kind() == AlarmKind.FEED_LOST);
        if (!linkUp && Duration.between(linkChanged, now).toSeconds() > 10) {
            assertFalse(snapshot.feedUp(), "the feed counts as up at " + now);
        }
        for (var probe : snapshot.probes()) {
            Instant last = probe.at();
            boolean silent = last == null || Duration.between(last, now).compareTo(NOTICED) > 0;
            boolean alarm = snapshot.alarms().stream()
                    .anyMatch(a -> (a.kind() == AlarmKind.PROBE_SILENT || a.kind() == AlarmKind.PROBE_IMPLAUSIBLE)
                            && a.subject().equals(probe.probe().id()));
            boolean watchedLong = Duration.between(listeningSince, now).compareTo(NOTICED) > 0;
            assertTrue(
                    !silent || !watchedLong || alarm || feedAlarm,
                    () -> probe.probe().id() + " silent since " + last + " without an alarm at " + now);
        }
    }

    private void everyEntryIsOnTheRecord(Path state) throws IOException {
        assertTrue(kept.size() > 3, "hardly anything was entered: " + kept.size());
        try (var journal = bywash.ingest.journal.JournalReader.open(state, "larkfield")) {
            List<OperatorEntry> there = journal.entries(START.minusSeconds(1), now.plusSeconds(1)).stream()
                    .map(line -> line.entry())
                    .toList();
            List<OperatorEntry> missing = new ArrayList<>(kept);
            there.forEach(missing::remove);
            assertEquals(List.of(), missing);
        }
    }
}
