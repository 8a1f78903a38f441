package bywash.tui.watch;

import bywash.ingest.journal.Journal;
import bywash.ingest.mqtt.FeedState;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.SiteFile;
import bywash.rules.alarm.AlarmState;
import bywash.rules.event.OperatorEntry;
import bywash.samples.simulation.SimulatedSite;
import bywash.samples.simulation.SiteModel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * A month at speed through the whole watch, loop, rules and journal: the invented site with its chores and an inflow a week,
 * brokers that restart, probes that fall silent, kills, stops, full disks and a grower who acknowledges. Prints figures.
 * {@code java -cp tui/target/test-classes:tui/target/bywash.jar bywash.tui.watch.Soak [DAYS [SEED]]}
 */
public final class Soak {
    private static final Instant START = Instant.parse("2026-05-04T00:00:00Z");
    private static final Duration STEP = Duration.ofSeconds(10);
    private static final long MAY_WAIT = 8_000_000;

    private final SiteFile site;
    private final Path dir;
    private final SoakPlan plan;
    private final SoakBooks books;
    private final Deque<SoakPlan.Mishap> mishaps;
    private final Map<String, Instant> mute = new HashMap<>();
    private Instant now = START;
    private Instant linkBack = Instant.MIN;
    private boolean linkUp = true;
    private Instant diskBack = Instant.MIN;
    private boolean full;
    private Instant down = Instant.MIN;
    private int lives;
    private Path state;
    private Journal journal;
    private Station station;
    private long messages;
    private long unheard;
    private int refusedToKeep;

    private Soak(SiteFile site, Path dir, int days, long seed) throws Exception {
        this.site = site;
        this.dir = dir;
        this.plan = new SoakPlan(START, days, seed);
        this.books = new SoakBooks(plan);
        this.mishaps = plan.mishaps();
        this.state = dir.resolve("life0");
        begin();
    }

    /** Runs it. */
    public static void main(String[] arguments) throws Exception {
        int days = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 30;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        Path memory = Path.of("/dev/shm");
        Path dir = Files.isWritable(memory)
                ? Files.createTempDirectory(memory, "bywash-soak-")
                : Files.createTempDirectory("bywash-soak-");
        try {
            new Soak(Larkfield.site(), dir, days, seed).run(seed);
        } finally {
            delete(dir);
        }
    }

    private void run(long seed) throws Exception {
        SimulatedSite sim =
                new SimulatedSite(SiteModel.larkfield(), plan.actions, START, Duration.ofDays(plan.days), seed);
        Instant next = START.plus(STEP);
        Instant week = START.plus(Duration.ofDays(7));
        for (RecordedLine line = sim.next(); line != null; line = sim.next()) {
            while (!line.time().isBefore(next)) {
                round(next);
                next = next.plus(STEP);
            }
            if (!next.isBefore(week)) {
                figures((int) Duration.between(START, week).toDays());
                week = week.plus(Duration.ofDays(7));
            }
            if (line instanceof RecordedLine.Entry entry) {
                enter(entry.entry());
            } else if (line instanceof Message message) {
                arrives(message);
            }
        }
        station.watch().end();
        begin();
        books.check(state, site.site().id(), station.watch().latest());
        figures(plan.days);
        System.out.println("kills " + plan.times(SoakPlan.What.KILL) + ", stops " + plan.times(SoakPlan.What.STOP)
                + ", restarts " + lives + ", broker restarts " + plan.times(SoakPlan.What.BROKER_GONE)
                + ", probe gaps " + plan.times(SoakPlan.What.PROBE_GAP) + ", full disks "
                + plan.times(SoakPlan.What.FULL_DISK));
        System.out.println("messages heard " + messages + ", sent while nobody listened " + unheard
                + "; entries that had to wait for a full disk " + refusedToKeep);
        books.print();
        station.watch().end();
    }

    private void arrives(Message message) {
        if (!linkUp
                || message.time().isBefore(down)
                || message.time().isBefore(mute.getOrDefault(message.topic(), down))) {
            unheard++;
            return;
        }
        messages++;
        station.queue().offer(message);
    }

    private void enter(OperatorEntry entry) {
        station.watch().enter(entry).thenAccept(kept -> {
            books.entered(entry);
            refusedToKeep += kept ? 0 : 1;
        });
    }

    private void round(Instant to) throws Exception {
        now = to;
        while (!mishaps.isEmpty() && !now.isBefore(mishaps.peek().from())) {
            befall(mishaps.poll());
        }
        if (now.isBefore(down)) {
            return;
        }
        if (!linkUp && !now.isBefore(linkBack)) {
            linkUp = true;
            feed(FeedState.Phase.UP, "connected");
        }
        if (full && !now.isBefore(diskBack)) {
            full = false;
            journal.limitPages(Integer.MAX_VALUE);
        }
        acknowledge();
        List<Message> batch = new ArrayList<>();
        if (station.queue().counts().waiting() > 0) {
            station.queue().drain(batch, 0);
        }
        station.watch().step(batch);
    }

    /** The grower comes by every half hour. */
    private void acknowledge() {
        boolean fresh = station.watch().latest().snapshot().alarms().stream()
                .anyMatch(
                        a -> a.state() == AlarmState.UNACKNOWLEDGED || a.state() == AlarmState.RETURNED_UNACKNOWLEDGED);
        if (now.getEpochSecond() % 1800 == 0 && fresh) {
            enter(new OperatorEntry.Acknowledge(now, null, null));
        }
    }

    private void feed(FeedState.Phase phase, String detail) {
        station.watch().feed(new FeedState(phase, detail, now));
    }

    private void befall(SoakPlan.Mishap m) throws Exception {
        if (now.isBefore(down)) {
            return;
        }
        switch (m.what()) {
            case BROKER_GONE -> {
                linkUp = false;
                linkBack = m.until();
                feed(FeedState.Phase.LOST, "broker gone");
            }
            case PROBE_GAP -> mute.put(m.topic(), m.until());
            case KILL -> again(m.until(), false);
            case STOP -> again(m.until(), true);
            case FULL_DISK -> {
                full = true;
                diskBack = m.until();
                journal.limitPages(1);
            }
            case NOTE -> enter(new OperatorEntry.Note(now, "note of " + now));
        }
    }

    /** What a full disk had no room for is not on the record of a watch that dies: not what is tried here. */
    private void again(Instant until, boolean inOrder) throws Exception {
        if (station.record().owed() > 0) {
            return;
        }
        Path before = state;
        state = dir.resolve("life" + ++lives);
        if (inOrder) {
            station.watch().end();
        }
        CrashedFiles.killed(before, state);
        if (!inOrder) {
            station.watch().end();
        }
        delete(before);
        down = until;
        now = until;
        begin();
        books.check(state, site.site().id(), station.watch().latest());
    }

    private void begin() throws Exception {
        journal = Journal.open(state, site.site().id(), () -> now);
        station = Station.on(site, state, WatchRecord.in(journal, MAY_WAIT), journal, () -> now);
        station.outlets().add(books::line);
        full = false;
    }

    private void figures(int day) throws IOException {
        System.gc();
        Runtime heap = Runtime.getRuntime();
        long size = 0;
        try (Stream<Path> files = Files.list(state)) {
            for (Path file : files.toList()) {
                size += Files.size(file);
            }
        }
        System.out.printf(
                "day %d: %d messages, %d alarm lines, %d entries, %d restarts, journal %.1f MB, heap in use %.1f MB%n",
                day,
                messages,
                books.shown(),
                books.entries(),
                lives,
                size / 1e6,
                (heap.totalMemory() - heap.freeMemory()) / 1e6);
    }

    private static void delete(Path dir) throws IOException {
        try (Stream<Path> all = Files.walk(dir)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
