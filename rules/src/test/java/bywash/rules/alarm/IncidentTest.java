package bywash.rules.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** One cause, one story, its first cause on top. */
class IncidentTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");
    private final AlarmBoard board = new AlarmBoard();

    private void raise(AlarmKind kind, String subject, long second) {
        board.set(kind, subject, T.plusSeconds(second), Condition.of("x", "", null));
        for (long s = second; s <= second + 400; s += 5) {
            board.tick(T.plusSeconds(s));
        }
    }

    private List<List<AlarmKind>> stories() {
        return Incident.of(board.views()).stream()
                .map(i -> i.alarms().stream().map(AlarmView::kind).toList())
                .toList();
    }

    @Test
    void aValveLeftOpenIsOneStoryThatBeginsWithTheWater() {
        raise(AlarmKind.UNPLANNED_INFLOW, "sump", 0);
        raise(AlarmKind.CHLORINE_RISK, "system", 600);
        raise(AlarmKind.TEMPERATURE_SWING, "fish-tank", 1200);
        raise(AlarmKind.OVERFLOW_NEAR, "sump", 1800);
        raise(AlarmKind.BIOFILTER_SETBACK, "system", 2400);
        assertEquals(
                List.of(List.of(
                        AlarmKind.UNPLANNED_INFLOW,
                        AlarmKind.CHLORINE_RISK,
                        AlarmKind.TEMPERATURE_SWING,
                        AlarmKind.OVERFLOW_NEAR,
                        AlarmKind.BIOFILTER_SETBACK)),
                stories());
        assertEquals(
                "20260504T060000Z-unplanned-inflow-sump", board.views().get(0).incident());
    }

    @Test
    void theCauseStaysOnTopWhenItIsRaisedAgain() {
        raise(AlarmKind.UNPLANNED_INFLOW, "sump", 0);
        raise(AlarmKind.CHLORINE_RISK, "system", 600);
        board.set(AlarmKind.UNPLANNED_INFLOW, "sump", T.plusSeconds(1005), null);
        for (int s = 1005; s <= 3000; s += 5) {
            board.tick(T.plusSeconds(s));
        }
        raise(AlarmKind.UNPLANNED_INFLOW, "sump", 3000);
        assertEquals(List.of(List.of(AlarmKind.UNPLANNED_INFLOW, AlarmKind.CHLORINE_RISK)), stories());
    }

    @Test
    void whatHasNothingToDoWithTheWaterIsAStoryOfItsOwn() {
        raise(AlarmKind.PH_HIGH, "fish-tank", 0);
        raise(AlarmKind.UNPLANNED_INFLOW, "sump", 600);
        raise(AlarmKind.PROBE_STUCK, "p", 1200);
        assertEquals(3, stories().size());
    }

    @Test
    void theSilenceOfProbesBelongsToTheLostFeed() {
        raise(AlarmKind.FEED_LOST, "feed", 0);
        raise(AlarmKind.PROBE_SILENT, "p", 600);
        raise(AlarmKind.PROBE_SILENT, "q", 1200);
        assertEquals(List.of(List.of(AlarmKind.FEED_LOST, AlarmKind.PROBE_SILENT, AlarmKind.PROBE_SILENT)), stories());
    }
}
