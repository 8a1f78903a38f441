package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.journal.JournalReader;
import bywash.ingest.mqtt.FeedState;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.SiteFile;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** One watch through an hour and more of everything that goes wrong, all from one seed, before a witness. */
final class FaultSimulation {
    private static final Instant START = Instant.parse("2026-05-04T06:00:00Z");
    private static final Instant FAR = START.plus(Duration.ofDays(3650));
    private static final int ROUNDS = 240;
    /** Bytes that may wait for a full disk: little, so that some seeds have to give up messages. */
    private static final long MAY_WAIT = 100_000;

    private final SiteFile site;
    private final Path dir;
    private final Sabotage sabotage;
    private final FaultyWorld world;
    private final Machine machine = new Machine(START);
    private final Witness witness;
    private final List<Object> hoard = new ArrayList<>();
    private Life life;
    private int lives;
    private boolean linkUp;
    private Instant linkBack = START;
    private Instant diskBusyUntil = START;
    private Instant diskFullUntil = START;
    private boolean full;
    /** Lines that no disk had room for before their watch ended; each was shown as not on disk. */
    private long notOnRecord;

    private boolean hangs;
    private Witness.Mark atDeath = new Witness.Mark(0, 0, 0);
    private Instant lastStep = START;
    private long holds;

    FaultSimulation(long seed, SiteFile site, Path dir, Sabotage sabotage) throws Exception {
        this.site = site;
        this.dir = dir;
        this.sabotage = sabotage;
        this.world = new FaultyWorld(seed, site);
        this.witness = new Witness(world);
        this.life = begin(dir.resolve("life0"));
    }

    /** What the watch held at its end, in cells. */
    long holds() {
        return holds;
    }

    FaultSimulation run() throws Exception {
        for (int round = 0; round < ROUNDS; round++) {
            machine.pass(Duration.ofSeconds(10));
            clock();
            disk();
            line();
            happen();
            if (machine.now().isBefore(diskBusyUntil)) {
                hangs = true; // in a write, while messages go on to arrive
                continue;
            }
            breathe();
            boolean ends = world.oneIn(90);
            if (ends) {
                life.light(
                        dir.resolve("life" + ++lives),
                        world.random,
                        world.random.nextInt(4),
                        () -> atDeath = witness.mark());
            }
            step();
            if (ends) {
                next(world.oneIn(3));
            }
        }
        end();
        return this;
    }

    /** A disk that hung works again: the loop has yet to take up what came meanwhile. */
    private void breathe() {
        if (hangs) {
            hangs = false;
            witness.link(linkUp, machine.now());
            witness.listens(machine.now());
        }
    }

    private void clock() {
        boolean leapt = world.oneIn(80) && machine.set(world.between(-600, 600));
        leapt |= world.oneIn(400) && machine.set(world.between(-9000, 9000));
        if (leapt) {
            witness.listens(machine.now());
        }
    }

    private void disk() {
        if (world.oneIn(120)) {
            diskBusyUntil = machine.now().plus(world.between(10, 200));
        }
        if (full && !machine.now().isBefore(diskFullUntil)) {
            full = false;
            life.journal.limitPages(Integer.MAX_VALUE);
        } else if (!full && world.oneIn(400)) {
            full = true;
            diskFullUntil = machine.now().plus(world.between(30, 900));
            life.journal.limitPages(1);
        }
    }

    private void line() {
        if (!linkUp && !machine.now().isBefore(linkBack)) {
            link(true);
            boolean marked = sabotage != Sabotage.OLD_VALUES_AS_FRESH;
            for (Message m : world.retained(machine.now())) {
                offer(new Message(m.time(), m.topic(), m.payload(), m.qos(), marked));
            }
        } else if (linkUp && world.oneIn(60)) {
            link(false);
            linkBack = machine.now().plus(world.between(20, 400));
        }
        if (linkUp) {
            world.arriving(machine.now()).forEach(this::offer);
        }
    }

    private void offer(Message message) {
        life.station.queue().offer(message);
        if (sabotage == Sabotage.HOARD) {
            hoard.add(message);
        }
    }

    private void link(boolean up) {
        linkUp = up;
        if (up || sabotage != Sabotage.NEVER_TELL_OF_A_LOST_FEED) {
            FeedState.Phase phase = up ? FeedState.Phase.UP : FeedState.Phase.LOST;
            life.station.watch().feed(new FeedState(phase, up ? "connected" : "broker gone", machine.now()));
        }
        witness.link(up, machine.now());
    }

    private void happen() {
        if (world.oneIn(40)) {
            world.newManners();
        }
        if (world.oneIn(50)) {
            world.muteOne(machine.now().plus(world.between(60, 600)));
        }
        if (world.oneIn(120)) {
            world.muteAll(machine.now().plus(world.between(60, 300)));
        }
        if (linkUp && world.oneIn(150)) {
            world.flood(machine.now()).forEach(this::offer);
        }
        if (world.oneIn(15)) {
            enter(world.entry(machine.now()));
        }
    }

    private void enter(OperatorEntry entry) {
        Life on = life;
        on.station.watch().enter(entry).thenAccept(kept -> {
            witness.entered(entry, kept);
            if (kept) {
                solid(on);
                on.moment();
            }
        });
    }

    private void alarm(Life on, AlarmTransition t, String line) {
        boolean early = sabotage == Sabotage.SHOW_BEFORE_IT_IS_KEPT;
        if (!early) {
            solid(on);
            on.moment(); // on the record, not yet on the screen
        }
        witness.line(t, line);
        solid(on);
        on.moment();
    }

    /** Where nothing waits in memory, all that was shown must be found again. */
    private void solid(Life on) {
        if (on.station.record().owed() == 0) {
            boolean early = sabotage == Sabotage.SHOW_BEFORE_IT_IS_KEPT;
            if (!early) {
                on.synced();
            }
            witness.solid();
        }
    }

    private void step() throws InterruptedException {
        List<Message> batch = new ArrayList<>();
        if (life.station.queue().counts().waiting() > 0) {
            life.station.queue().drain(batch, 0);
        }
        lastStep = machine.now();
        life.station.watch().step(batch);
        solid(life);
        var counts = life.station.queue().counts();
        assertEquals(0, counts.waiting());
        assertEquals(0, counts.dropped(), "nothing was over the queue's bound here");
        judge();
    }

    private void judge() {
        FrameSource frame = life.station.watch().latest();
        witness.silence(frame.snapshot(), machine.now());
        witness.alarms(frame.snapshot(), "at " + machine.now());
        assertEquals(0, life.station.watch().faults(), "no fault of ours in the rules");
        boolean quiet = sabotage == Sabotage.SAY_NOTHING_OF_A_FULL_DISK;
        assertTrue(
                (life.journal.state().durable() && life.station.record().owed() == 0)
                        || (!quiet && frame.note().contains("NOT ON DISK")),
                "a journal at fault is said: " + frame.note());
    }

    /** The end of one process, and the start of the next. */
    private void next(boolean inOrder) throws Exception {
        Path state = dir.resolve("life" + lives);
        boolean stopped = inOrder && !life.dead();
        String how = (stopped ? "stopped" : life.death()) + " before " + machine.now();
        if (stopped) {
            life.station.watch().end();
            solid(life);
        }
        notOnRecord += life.station.record().unkept() + life.station.record().owed();
        life.die();
        if (!stopped) {
            life.station.watch().end();
        }
        witness.backTo(atDeath);
        JournalSaboteur.spoil(sabotage, state, site.site().id());
        machine.pass(world.between(1, 900));
        diskBusyUntil = machine.now();
        linkUp = false;
        linkBack = machine.now();
        witness.onRecord(transitions(state), how);
        life = begin(state);
        witness.alarms(life.station.watch().latest().snapshot(), how);
        if (full) {
            life.journal.limitPages(1);
        }
        step();
    }

    private Life begin(Path state) throws Exception {
        long mayWait = sabotage == Sabotage.FORGET_WHAT_WAITS ? 1 : MAY_WAIT;
        Life begun = Life.begin(site, state, machine.clock(), mayWait);
        begun.station.outlets().add((t, line) -> alarm(begun, t, line));
        List<Object> held = hoard;
        begun.station.watch().tellOf(() -> held.isEmpty() ? "" : "");
        begun.station.watch().feed(new FeedState(FeedState.Phase.CONNECTING, "connecting", machine.now()));
        witness.link(false, machine.now());
        witness.listens(machine.now());
        return begun;
    }

    private List<String> transitions(Path state) throws IOException {
        try (JournalReader reader = JournalReader.open(state, site.site().id())) {
            return reader.transitions(Instant.EPOCH, FAR);
        }
    }

    /** What a watch of this site may hold, in cells: half as much again as the most that a thousand seeds came to. */
    private static final long MOST = 450_000;

    private void end() throws Exception {
        machine.pass(Duration.ofSeconds(10));
        life.journal.limitPages(Integer.MAX_VALUE);
        breathe();
        step();
        Holdings holdings = Holdings.of(life.station, this, life, witness, world);
        holds = holdings.cells();
        assertTrue(holds < MOST, () -> "memory is bounded: " + holds + " cells, of them " + holdings.most());
        life.station.watch().end();
        JournalSaboteur.spoil(sabotage, life.state, site.site().id());
        entriesAreThere();
        List<String> onRecord = transitions(life.state);
        witness.onRecord(onRecord, "at the end");
        notOnRecord += life.station.record().unkept() + life.station.record().owed();
        if (notOnRecord == 0) {
            sameLines(onRecord, replayed());
        }
    }

    private static void sameLines(List<String> live, List<String> replayed) {
        for (int i = 0; i < Math.max(live.size(), replayed.size()); i++) {
            String one = i < live.size() ? live.get(i) : "none";
            String other = i < replayed.size() ? replayed.get(i) : "none";
            assertEquals(one, other, "a replay of the journal gives the same alarm lines, not so line " + i);
        }
    }

    private void entriesAreThere() throws IOException {
        List<OperatorEntry> missing = new ArrayList<>(witness.kept());
        try (JournalReader reader = JournalReader.open(life.state, site.site().id())) {
            reader.entries(Instant.EPOCH, FAR).forEach(line -> missing.remove(line.entry()));
        }
        assertEquals(List.of(), missing, "no shown entry lost");
    }

    private List<String> replayed() throws IOException {
        List<String> lines = new ArrayList<>();
        Pipeline pipeline =
                new Pipeline(site, t -> lines.add(AlarmLines.of(site.site().id(), t)), reading -> {});
        try (JournalReader reader = JournalReader.open(life.state, site.site().id())) {
            assertEquals(0, reader.lines(Instant.EPOCH, FAR, pipeline::accept));
        }
        pipeline.advanceTo(lastStep);
        return lines;
    }
}
