package bywash.tui.watch;

import bywash.ingest.feed.EventTimeOrder;
import bywash.ingest.recording.RecordedLine;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import bywash.tui.view.Playback;
import bywash.tui.view.Playback.Command;
import bywash.tui.view.Playback.State;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import java.util.function.Function;

/** Plays lines at a pace that can be changed, halted and stepped, and lets the grower act on them meanwhile. */
public final class ReplayWatch implements Runnable {
    /** How far one step goes, in event time. */
    public static final Duration STEP = Duration.ofSeconds(10);

    private static final long PAUSE_NANOS = 50_000_000;
    private static final int LINES_AT_ONCE = 20_000;
    private static final double SLOWEST = 1;
    private static final double FASTEST = 10_000;

    private final Pipeline pipeline;
    private final List<RecordedLine> lines;
    private final ConcurrentLinkedQueue<OperatorEntry> entries = new ConcurrentLinkedQueue<>();
    private final ConcurrentLinkedQueue<Command> commands = new ConcurrentLinkedQueue<>();
    private final Instant first;
    private final Instant last;
    private State state = State.PLAYING;
    private double speed;
    private Instant now;
    private int next;
    private boolean raised;
    private volatile Position latest;
    private volatile boolean stop;

    /** A frame and where the replay stood then. */
    public record Position(FrameSource frame, Playback playback) {}

    /**
     * @param pipeline made from whom it is to tell of transitions besides its own listeners
     * @param lines at least one, in order of time
     * @param speed times real time; infinite plays without waiting
     */
    public ReplayWatch(Function<Consumer<AlarmTransition>, Pipeline> pipeline, List<RecordedLine> lines, double speed) {
        if (lines.isEmpty()) {
            throw new IllegalArgumentException("a replay needs at least one line");
        }
        this.pipeline = pipeline.apply(this::transition);
        this.lines = lines;
        this.speed = speed;
        this.first = lines.get(0).time();
        this.last = lines.get(lines.size() - 1).time();
        this.now = first;
        this.latest = position();
    }

    private void transition(AlarmTransition transition) {
        raised |= transition.state() == AlarmState.UNACKNOWLEDGED;
    }

    /** Any thread: what the grower entered. */
    public void enter(OperatorEntry entry) {
        entries.add(entry);
    }

    /** Any thread: what the replay is to do. */
    public void control(Command command) {
        commands.add(command);
    }

    public Position latest() {
        return latest;
    }

    public void stop() {
        stop = true;
    }

    @Override
    public void run() {
        long before = System.nanoTime();
        while (!stop) {
            long nanos = System.nanoTime();
            step(nanos - before);
            before = nanos;
            LockSupport.parkNanos(PAUSE_NANOS);
        }
    }

    /** One turn of the loop, so much wall time after the one before. */
    void step(long nanos) {
        for (Command command = commands.poll(); command != null; command = commands.poll()) {
            obey(command);
        }
        switch (state) {
            case PLAYING -> playTo(Double.isInfinite(speed) ? last : now.plusNanos((long) (nanos * speed)));
            case SEEKING -> seek();
            case PAUSED, ENDED -> {}
        }
        boolean entered = !entries.isEmpty();
        for (OperatorEntry entry = entries.poll(); entry != null; entry = entries.poll()) {
            pipeline.enter(entry);
        }
        if (entered && (state == State.PAUSED || state == State.ENDED)) {
            settle();
        }
        pipeline.advanceTo(now);
        latest = position();
    }

    /** Time goes on just far enough for an entry to be put in order, so that its effect shows while paused. */
    private void settle() {
        Instant to = now.plus(EventTimeOrder.DEFAULT_LATENESS).plusSeconds(1);
        if (state == State.PAUSED) {
            playTo(to);
        } else {
            now = to;
        }
    }

    private void obey(Command command) {
        switch (command) {
            case PAUSE -> state = state == State.ENDED ? state : state == State.PAUSED ? State.PLAYING : State.PAUSED;
            case FASTER -> speed = Math.min(FASTEST, speed * 2);
            case SLOWER -> speed = Math.max(SLOWEST, Math.min(FASTEST, speed) / 2);
            case STEP -> {
                if (state != State.ENDED) {
                    state = State.PAUSED;
                    playTo(now.plus(STEP));
                }
            }
            case NEXT_ALARM -> {
                raised = false;
                state = state == State.ENDED ? state : State.SEEKING;
            }
        }
    }

    /** Plays all lines up to a time; stops earlier where there are too many for one turn. */
    private void playTo(Instant to) {
        int most = next + LINES_AT_ONCE;
        while (next < lines.size() && next < most && !lines.get(next).time().isAfter(to)) {
            pipeline.accept(lines.get(next));
            next++;
        }
        boolean all = next < most || next >= lines.size();
        move(all ? to : lines.get(next - 1).time());
    }

    /** Plays line by line until an alarm is raised. */
    private void seek() {
        int most = next + LINES_AT_ONCE;
        while (next < lines.size() && next < most && !raised) {
            RecordedLine line = lines.get(next);
            pipeline.accept(line);
            pipeline.advanceTo(line.time());
            next++;
        }
        move(next > 0 ? lines.get(next - 1).time() : first);
        if (raised && state == State.SEEKING) {
            state = State.PAUSED;
        }
    }

    private void move(Instant to) {
        now = to.isAfter(last) ? last : to.isBefore(now) ? now : to;
        if (next >= lines.size() && !now.isBefore(last)) {
            state = State.ENDED;
        }
    }

    private Position position() {
        Playback playback = new Playback(state, speed, first, now, last);
        return new Position(
                new FrameSource(
                        pipeline.snapshot(),
                        now,
                        0,
                        pipeline.refused(),
                        pipeline.late(),
                        pipeline.safeReserves(),
                        playback.words()),
                playback);
    }
}
