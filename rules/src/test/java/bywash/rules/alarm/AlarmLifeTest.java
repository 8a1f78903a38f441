package bywash.rules.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.rules.event.OperatorEntry.OutOfService;
import bywash.rules.event.OperatorEntry.ReturnToService;
import bywash.rules.event.OperatorEntry.Shelve;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvSource;

/** Every state with every input, after ANSI/ISA-18.2-2016 (from memory), and the delays and shelving of the board. */
class AlarmLifeTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");

    /**
     * Columns: state, then what RAISE, CLEAR, ACKNOWLEDGE, ANNOUNCE_AGAIN, each of the three that hide (S, D, O for shelved,
     * suppressed by design, out of service) and each of the three that show again give while the condition holds; - is none.
     */
    @ParameterizedTest
    @CsvSource({
        "NORMAL,                  UNACKNOWLEDGED, -,                       -,            -,              SDO, -",
        "UNACKNOWLEDGED,          -,              RETURNED_UNACKNOWLEDGED, ACKNOWLEDGED, UNACKNOWLEDGED, SDO, -",
        "ACKNOWLEDGED,            -,              NORMAL,                  -,            -,              SDO, -",
        "RETURNED_UNACKNOWLEDGED, UNACKNOWLEDGED, -,                       NORMAL,       -,              SDO, -",
        "SHELVED,                 -,              -,                       -,            -,              -,   UNSHELVE",
        "SUPPRESSED,              -,              -,                       -,            -,              -,   RELEASE",
        "OUT_OF_SERVICE,          -,              -,                       -,            -, -, RETURN_TO_SERVICE"
    })
    void movesOnlyWhereTheStandardAllows(ArgumentsAccessor row) {
        AlarmState from = AlarmState.valueOf(row.getString(0));
        assertEquals(state(row.getString(1)), AlarmLife.next(from, AlarmInput.RAISE, true, false));
        assertEquals(state(row.getString(2)), AlarmLife.next(from, AlarmInput.CLEAR, false, false));
        assertEquals(state(row.getString(3)), AlarmLife.next(from, AlarmInput.ACKNOWLEDGE, true, false));
        assertEquals(state(row.getString(4)), AlarmLife.next(from, AlarmInput.ANNOUNCE_AGAIN, true, false));
        boolean hides = row.getString(5).equals("SDO");
        assertEquals(hidden(hides, AlarmState.SHELVED), AlarmLife.next(from, AlarmInput.SHELVE, true, false));
        assertEquals(hidden(hides, AlarmState.SUPPRESSED), AlarmLife.next(from, AlarmInput.SUPPRESS, true, false));
        assertEquals(
                hidden(hides, AlarmState.OUT_OF_SERVICE),
                AlarmLife.next(from, AlarmInput.REMOVE_FROM_SERVICE, true, false));
        for (AlarmInput shows : EnumSet.of(AlarmInput.UNSHELVE, AlarmInput.RELEASE, AlarmInput.RETURN_TO_SERVICE)) {
            boolean legal = row.getString(6).equals(shows.name());
            assertEquals(hidden(legal, AlarmState.UNACKNOWLEDGED), AlarmLife.next(from, shows, true, false));
            assertEquals(hidden(legal, AlarmState.NORMAL), AlarmLife.next(from, shows, false, false));
        }
    }

    private static Optional<AlarmState> hidden(boolean legal, AlarmState state) {
        return legal ? Optional.of(state) : Optional.empty();
    }

    @Test
    void latchingChangesOnlyWhatBecomesOfAnAcknowledgedAlarm() {
        for (AlarmState from : AlarmState.values()) {
            for (AlarmInput input : AlarmInput.values()) {
                Optional<AlarmState> latched = AlarmLife.next(from, input, false, true);
                if (from == AlarmState.ACKNOWLEDGED && input == AlarmInput.CLEAR) {
                    assertEquals(Optional.of(AlarmState.RETURNED_UNACKNOWLEDGED), latched);
                } else {
                    assertEquals(AlarmLife.next(from, input, false, false), latched, from + " " + input);
                }
            }
        }
    }

    private static Optional<AlarmState> state(String word) {
        return word.equals("-") ? Optional.empty() : Optional.of(AlarmState.valueOf(word));
    }

    @Test
    void raisesOnlyAfterTheOnDelay() {
        AlarmBoard board = new AlarmBoard();
        board.set(AlarmKind.PH_LOW, "fish-tank", T, Condition.of("low", "", null));
        board.tick(T.plusSeconds(59));
        assertEquals(List.of(), board.drain());
        board.tick(T.plusSeconds(60));
        assertEquals(AlarmState.UNACKNOWLEDGED, board.drain().get(0).state());
    }

    @Test
    void staysReturnedUntilAcknowledged() {
        AlarmBoard board = raised();
        assertNull(board.views().get(0).easedAt());
        board.set(AlarmKind.PROBE_SILENT, "p", T.plusSeconds(10), null);
        assertEquals(T.plusSeconds(10), board.views().get(0).easedAt(), "it stands until its off-delay is over");
        board.tick(T.plusSeconds(25));
        AlarmTransition returned = board.drain().get(0);
        assertEquals(AlarmState.RETURNED_UNACKNOWLEDGED, returned.state());
        assertEquals("Back to normal: silent", returned.message());
        board.acknowledge(new Acknowledge(T.plusSeconds(30), null, null));
        assertEquals(AlarmState.NORMAL, board.drain().get(0).state());
        assertEquals(List.of(), board.views());
    }

    @Test
    void comesBackUnacknowledgedWhenShelvingEndsAndTheConditionStillHolds() {
        AlarmBoard board = raised();
        board.shelve(new Shelve(T.plusSeconds(5), "probe-silent", "p", Duration.ofMinutes(10)));
        assertEquals(AlarmState.SHELVED, board.drain().get(0).state());
        board.tick(T.plusSeconds(604));
        assertEquals(List.of(), board.drain());
        board.tick(T.plusSeconds(605));
        assertEquals(AlarmState.UNACKNOWLEDGED, board.drain().get(0).state());
    }

    @Test
    void callsAgainWhileNobodyAcknowledges() {
        AlarmBoard board = raised(); // of high priority: each half hour
        board.tick(T.plusSeconds(1799));
        assertEquals(List.of(), board.drain());
        board.tick(T.plusSeconds(1800));
        AlarmTransition again = board.drain().get(0);
        assertEquals(AlarmState.UNACKNOWLEDGED, again.state());
        assertTrue(again.again());
        assertEquals(2.0, again.values().get("announcement"));
        board.acknowledge(new Acknowledge(T.plusSeconds(1900), null, null));
        assertFalse(board.drain().get(0).again());
        board.tick(T.plusSeconds(7200));
        assertEquals(List.of(), board.drain());
    }

    @Test
    void isQuietByDesignAndCallsWhenThatEnds() {
        AlarmBoard board = raised();
        board.suppress(AlarmKind.PROBE_SILENT, "p", true);
        board.suppress(AlarmKind.PROBE_STUCK, "p", true);
        board.set(AlarmKind.PROBE_STUCK, "p", T.plusSeconds(5), Condition.of("stuck", "", null));
        board.tick(T.plusSeconds(5));
        assertEquals(
                List.of(AlarmState.SUPPRESSED, AlarmState.SUPPRESSED),
                board.drain().stream().map(AlarmTransition::state).toList());
        board.suppress(AlarmKind.PROBE_SILENT, "p", false);
        board.set(AlarmKind.PROBE_STUCK, "p", T.plusSeconds(10), null);
        board.tick(T.plusSeconds(10));
        assertEquals(AlarmState.UNACKNOWLEDGED, board.drain().get(0).state());
        board.tick(T.plusSeconds(30));
        board.suppress(AlarmKind.PROBE_STUCK, "p", false);
        board.tick(T.plusSeconds(35));
        assertEquals(AlarmState.NORMAL, board.drain().get(0).state(), "its condition went meanwhile");
    }

    @Test
    void staysOutOfServiceUntilItIsReturned() {
        AlarmBoard board = raised();
        board.removeFromService(new OutOfService(T.plusSeconds(1), "probe-silent", "p", "no spare"));
        board.set(AlarmKind.PROBE_SILENT, "p", T.plusSeconds(2), null);
        board.tick(T.plusSeconds(100_000));
        assertEquals(AlarmState.OUT_OF_SERVICE, board.views().get(0).state());
        board.drain();
        board.returnToService(new ReturnToService(T.plusSeconds(100_001), "probe-silent", "p"));
        assertEquals(AlarmState.NORMAL, board.drain().get(0).state());
    }

    @Test
    void standsAsOneAlarmWhenItChatters() {
        AlarmBoard board = new AlarmBoard();
        assertEquals(3, chatters(board, 40));
    }

    @Test
    void oneThatChatteredIsOverOnlyAfterTenMinutesOfCalm() {
        AlarmBoard board = new AlarmBoard();
        assertEquals(3, chatters(board, 10));
        Instant calm = T.plusSeconds(30 * 9);
        board.tick(calm.plusSeconds(599));
        assertEquals(AlarmState.UNACKNOWLEDGED, board.views().get(0).state());
        board.tick(calm.plusSeconds(600));
        assertEquals(AlarmState.RETURNED_UNACKNOWLEDGED, board.views().get(0).state());
    }

    /** So many half minutes, in turn there and gone; how often it was raised. */
    private static int chatters(AlarmBoard board, int halfMinutes) {
        int raised = 0;
        for (int i = 0; i < halfMinutes; i++) {
            Instant at = T.plusSeconds(30L * i);
            board.set(AlarmKind.PROBE_STUCK, "p", at, i % 2 == 0 ? Condition.of("stuck", "", null) : null);
            for (int tick = 0; tick < 30; tick += 5) {
                board.tick(at.plusSeconds(tick));
            }
            raised += (int) board.drain().stream()
                    .filter(t -> t.state() == AlarmState.UNACKNOWLEDGED)
                    .count();
        }
        return raised;
    }

    @Test
    void everyAlarmSaysWhatItComesOfWhatFollowsAndWhatToDo() {
        for (AlarmKind kind : AlarmKind.values()) {
            AlarmRationale rationale = AlarmRationale.of(kind);
            Guidance guidance = Guidance.of(kind);
            assertFalse(rationale.cause().isEmpty()
                    || guidance.consequence().isEmpty()
                    || guidance.action().isEmpty());
            assertTrue(rationale.respondWithin().toMinutes() >= 5);
        }
    }

    @Test
    void givesNoDeadlineOnceItsConditionHoldsNoMore() {
        AlarmBoard board = new AlarmBoard();
        Instant overflow = T.plusSeconds(900);
        for (int s = 0; s <= 60; s += 5) {
            board.set(
                    AlarmKind.OVERFLOW_NEAR,
                    "sump",
                    T.plusSeconds(s),
                    Condition.of("near", "", overflow.plusSeconds(s)));
            board.tick(T.plusSeconds(s));
        }
        assertEquals(overflow.plusSeconds(60), board.views().get(0).deadline());
        board.set(AlarmKind.OVERFLOW_NEAR, "sump", T.plusSeconds(65), null);
        board.tick(T.plusSeconds(65));
        assertEquals(AlarmState.UNACKNOWLEDGED, board.views().get(0).state());
        assertNull(board.views().get(0).deadline());
    }

    @Test
    void aLineOfWhatNoLongerHoldsSaysSo() {
        AlarmBoard board = raised();
        board.set(AlarmKind.PROBE_SILENT, "p", T.plusSeconds(10), null);
        board.acknowledge(new Acknowledge(T.plusSeconds(12), null, null));
        assertEquals(
                "Not so now, over if that lasts: silent", board.drain().get(0).message());
        assertEquals("silent", board.views().get(0).message(), "a screen says since when");
    }

    private static AlarmBoard raised() {
        AlarmBoard board = new AlarmBoard();
        board.set(AlarmKind.PROBE_SILENT, "p", T, Condition.of("silent", "", null));
        board.tick(T);
        assertEquals(AlarmState.UNACKNOWLEDGED, board.drain().get(0).state());
        return board;
    }
}
