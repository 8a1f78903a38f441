package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.samples.demo.DemoFeed;
import bywash.tui.view.Playback.Command;
import bywash.tui.view.Playback.State;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The replay's controls, turn by turn, without a clock: each turn is told how much wall time went by. */
final class ReplayWatchTest {
    private static final long SECOND = 1_000_000_000L;
    private static List<RecordedLine> lines = List.of();
    private static @Nullable SiteFile site;

    private final List<AlarmTransition> transitions = new ArrayList<>();
    private final ReplayWatch watch = new ReplayWatch(
            raised -> new Pipeline(
                    Objects.requireNonNull(site),
                    t -> {
                        transitions.add(t);
                        raised.accept(t);
                    },
                    r -> {}),
            lines,
            60);

    @BeforeAll
    static void demo() throws IOException {
        lines = DemoFeed.lines();
        try (InputStream in = Objects.requireNonNull(ReplayWatchTest.class.getResourceAsStream(DemoFeed.SITE))) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            site = ((SiteFileResult.Good) SiteFileReader.read(text, "larkfield.yaml")).siteFile();
        }
    }

    private Duration come() {
        return Duration.between(lines.get(0).time(), watch.latest().playback().at());
    }

    @Test
    void playsAtItsSpeedAndStandsStillWhilePaused() {
        watch.step(SECOND);
        assertEquals(Duration.ofSeconds(60), come());
        watch.control(Command.PAUSE);
        watch.step(SECOND);
        watch.step(SECOND);
        assertEquals(Duration.ofSeconds(60), come());
        assertEquals(State.PAUSED, watch.latest().playback().state());
        watch.control(Command.PAUSE);
        watch.control(Command.FASTER);
        watch.step(SECOND);
        assertEquals(Duration.ofSeconds(180), come());
        watch.control(Command.SLOWER);
        watch.control(Command.SLOWER);
        watch.step(SECOND);
        assertEquals(Duration.ofSeconds(210), come());
    }

    @Test
    void aStepGoesTenSecondsAndPauses() {
        watch.control(Command.STEP);
        watch.step(SECOND);
        watch.step(SECOND);
        assertEquals(ReplayWatch.STEP, come());
        assertEquals(State.PAUSED, watch.latest().playback().state());
    }

    @Test
    void jumpsToTheNextAlarmAndPausesThere() {
        watch.control(Command.NEXT_ALARM);
        for (int turn = 0; turn < 100 && watch.latest().playback().state() != State.PAUSED; turn++) {
            watch.step(0);
        }
        List<AlarmTransition> raised = transitions.stream()
                .filter(t -> t.state() == AlarmState.UNACKNOWLEDGED)
                .toList();
        assertFalse(raised.isEmpty());
        Duration late =
                Duration.between(raised.get(0).at(), watch.latest().playback().at());
        assertTrue(late.compareTo(Duration.ofSeconds(10)) < 0, late.toString());
        assertFalse(watch.latest().frame().snapshot().alarms().isEmpty());
    }

    @Test
    void whatIsEnteredWhilePausedShowsAtOnce() {
        watch.control(Command.NEXT_ALARM);
        for (int turn = 0; turn < 100 && watch.latest().playback().state() != State.PAUSED; turn++) {
            watch.step(0);
        }
        watch.enter(new Acknowledge(watch.latest().frame().now(), null, null));
        watch.step(0);
        assertTrue(watch.latest().frame().snapshot().alarms().stream()
                .allMatch(a -> a.state() == AlarmState.ACKNOWLEDGED));
        assertEquals(State.PAUSED, watch.latest().playback().state());
    }

    @Test
    void playsToTheEndWithoutWaitingAndSaysSo() {
        ReplayWatch fast = new ReplayWatch(
                raised -> new Pipeline(Objects.requireNonNull(site), raised, r -> {}), lines, Double.POSITIVE_INFINITY);
        for (int turn = 0; turn < 100 && fast.latest().playback().state() != State.ENDED; turn++) {
            fast.step(0);
        }
        assertEquals(1, fast.latest().playback().share());
        assertEquals("replay ended", fast.latest().playback().words());
        fast.control(Command.PAUSE);
        fast.control(Command.NEXT_ALARM);
        fast.step(SECOND);
        assertEquals(State.ENDED, fast.latest().playback().state());
    }

    @Test
    void anEmptyRecordingIsNoReplay() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new ReplayWatch(
                        raised -> new Pipeline(Objects.requireNonNull(site), raised, r -> {}), List.of(), 60));
    }
}
