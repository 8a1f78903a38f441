package bywash.rules.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.EngineEvent;
import bywash.rules.event.EngineEvent.FeedChanged;
import bywash.rules.event.EngineEvent.OperatorActed;
import bywash.rules.event.EngineEvent.ReadingArrived;
import bywash.rules.event.EngineEvent.Tick;
import bywash.rules.event.EngineEvent.WatchStarted;
import bywash.rules.event.OperatorEntry.MaintenanceEnd;
import bywash.rules.event.OperatorEntry.MaintenanceStart;
import bywash.rules.event.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Alarms that are quiet by design, through the whole engine: a probe being cleaned, a lost feed. */
class SuppressionTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");
    private final Engine engine = new Engine(OxygenSite.site());
    private final List<AlarmTransition> all = new ArrayList<>();

    private void apply(EngineEvent event) {
        all.addAll(engine.apply(event));
    }

    private void ticks(long from, long to, double oxygen) {
        for (long s = from; s < to; s += 5) {
            if (!Double.isNaN(oxygen)) {
                apply(new ReadingArrived(new Reading("do", T.plusSeconds(s), oxygen + s % 3 * 0.01)));
            }
            apply(new Tick(T.plusSeconds(s)));
        }
    }

    private List<AlarmState> of(AlarmKind kind) {
        return all.stream()
                .filter(t -> t.kind() == kind)
                .map(AlarmTransition::state)
                .toList();
    }

    @Test
    void aProbeOutOfTheWaterForCleaningRaisesNothingUntilItShouldBeBack() {
        ticks(0, 60, 8);
        apply(new OperatorActed(new MaintenanceStart(T.plusSeconds(60), "do", Duration.ofMinutes(10), "cleaning")));
        ticks(60, 655, 1);
        assertEquals(List.of(AlarmState.SUPPRESSED), of(AlarmKind.LOW_OXYGEN));
        ticks(655, 700, 1);
        assertEquals(List.of(AlarmState.SUPPRESSED, AlarmState.UNACKNOWLEDGED), of(AlarmKind.LOW_OXYGEN));
    }

    @Test
    void theEndOfCleaningIsTheEndOfQuiet() {
        apply(new OperatorActed(new MaintenanceStart(T, "do", Duration.ofHours(5), "")));
        ticks(0, 100, 1);
        apply(new OperatorActed(new MaintenanceEnd(T.plusSeconds(100), "do")));
        ticks(100, 110, 1);
        assertEquals(List.of(AlarmState.SUPPRESSED, AlarmState.UNACKNOWLEDGED), of(AlarmKind.LOW_OXYGEN));
    }

    @Test
    void aGoodValueFromACleanersBucketDoesNotClearAnAlarm() {
        ticks(0, 60, 1);
        apply(new OperatorActed(new MaintenanceStart(T.plusSeconds(60), "do", Duration.ofMinutes(10), "cleaning")));
        ticks(60, 600, 8);
        ticks(600, 665, Double.NaN);
        assertEquals(
                List.of(AlarmState.UNACKNOWLEDGED, AlarmState.SUPPRESSED, AlarmState.UNACKNOWLEDGED),
                of(AlarmKind.LOW_OXYGEN));
        ticks(665, 800, 8);
        assertEquals(
                AlarmState.RETURNED_UNACKNOWLEDGED, of(AlarmKind.LOW_OXYGEN).get(3));
    }

    @Test
    void anAlarmDoesNotGoWhileItsProbeIsSilent() {
        ticks(0, 60, 1);
        ticks(60, 70, 8);
        ticks(70, 500, Double.NaN);
        assertEquals(List.of(AlarmState.UNACKNOWLEDGED), of(AlarmKind.LOW_OXYGEN));
        ticks(500, 700, 8);
        assertEquals(List.of(AlarmState.UNACKNOWLEDGED, AlarmState.RETURNED_UNACKNOWLEDGED), of(AlarmKind.LOW_OXYGEN));
    }

    @Test
    void aSilentProbeIsNotBackBecauseTheWatchWasStartedAgain() {
        ticks(0, 10, 8);
        ticks(10, 200, Double.NaN);
        apply(new WatchStarted(T.plusSeconds(900), T.plusSeconds(200)));
        ticks(900, 960, Double.NaN);
        assertEquals(List.of(AlarmState.UNACKNOWLEDGED), of(AlarmKind.PROBE_SILENT));
        ticks(960, 1000, 8);
        assertEquals(
                List.of(AlarmState.UNACKNOWLEDGED, AlarmState.RETURNED_UNACKNOWLEDGED), of(AlarmKind.PROBE_SILENT));
    }

    @Test
    void aForgottenEndIsTakenAfterADay() {
        apply(new OperatorActed(new MaintenanceStart(T, "do", Duration.ofDays(30), "")));
        ticks(0, 100, 1);
        ticks(86_395, 86_410, 1);
        assertEquals(List.of(AlarmState.SUPPRESSED, AlarmState.UNACKNOWLEDGED), of(AlarmKind.LOW_OXYGEN));
    }

    @Test
    void aLostFeedIsOneAlarmAndWhatStaysSilentAfterItIsAnother() {
        ticks(0, 60, 8);
        apply(new FeedChanged(T.plusSeconds(60), false, "broker gone"));
        ticks(60, 600, Double.NaN);
        assertEquals(List.of(AlarmState.UNACKNOWLEDGED), of(AlarmKind.FEED_LOST));
        assertEquals(List.of(AlarmState.SUPPRESSED), of(AlarmKind.PROBE_SILENT));
        apply(new FeedChanged(T.plusSeconds(600), true, "back"));
        ticks(600, 800, Double.NaN);
        assertEquals(List.of(AlarmState.SUPPRESSED, AlarmState.UNACKNOWLEDGED), of(AlarmKind.PROBE_SILENT));
    }
}
