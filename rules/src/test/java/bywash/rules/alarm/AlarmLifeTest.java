package bywash.rules.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.rules.event.OperatorEntry.Shelve;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every state with every input, after ANSI/ISA-18.2-2016 (from memory), and the delays and shelving of the board. */
class AlarmLifeTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");

    /** Columns: state, then what RAISE, CLEAR, ACKNOWLEDGE, SHELVE, UNSHELVE give while the condition holds; - is none. */
    @ParameterizedTest
    @CsvSource({
        "NORMAL, UNACKNOWLEDGED, -, -, SHELVED, -",
        "UNACKNOWLEDGED, -, RETURNED_UNACKNOWLEDGED, ACKNOWLEDGED, SHELVED, -",
        "ACKNOWLEDGED, -, NORMAL, -, SHELVED, -",
        "RETURNED_UNACKNOWLEDGED, UNACKNOWLEDGED, -, NORMAL, SHELVED, -",
        "SHELVED, -, -, -, -, UNACKNOWLEDGED",
        "SUPPRESSED, -, -, -, -, -",
        "OUT_OF_SERVICE, -, -, -, -, -"
    })
    void movesOnlyWhereTheStandardAllows(
            AlarmState from, String raise, String clear, String acknowledge, String shelve, String unshelve) {
        assertEquals(state(raise), AlarmLife.next(from, AlarmInput.RAISE, true));
        assertEquals(state(clear), AlarmLife.next(from, AlarmInput.CLEAR, true));
        assertEquals(state(acknowledge), AlarmLife.next(from, AlarmInput.ACKNOWLEDGE, true));
        assertEquals(state(shelve), AlarmLife.next(from, AlarmInput.SHELVE, true));
        assertEquals(state(unshelve), AlarmLife.next(from, AlarmInput.UNSHELVE, true));
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
        board.set(AlarmKind.PROBE_SILENT, "p", T.plusSeconds(10), null);
        board.tick(T.plusSeconds(25));
        assertEquals(AlarmState.RETURNED_UNACKNOWLEDGED, board.drain().get(0).state());
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

    private static AlarmBoard raised() {
        AlarmBoard board = new AlarmBoard();
        board.set(AlarmKind.PROBE_SILENT, "p", T, Condition.of("silent", "", null));
        board.tick(T);
        assertEquals(AlarmState.UNACKNOWLEDGED, board.drain().get(0).state());
        return board;
    }
}
