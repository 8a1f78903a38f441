package bywash.rules.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;

/** What is taken over of alarms after a restart, beside what the rules have seen again by then. */
class AlarmRestoreTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");
    private static final Instant NOW = T.plus(Duration.ofHours(1));

    private final AlarmBoard board = new AlarmBoard();

    private static AlarmMemory memory(AlarmState state) {
        return new AlarmMemory(AlarmKind.PROBE_SILENT, "p", state, "kept", T, T, 1, null, "silent", "");
    }

    private void seenAgain(Instant at) {
        board.set(AlarmKind.PROBE_SILENT, "p", at, Condition.of("silent again", "", null));
        board.tick(at);
        board.drain();
    }

    @ParameterizedTest
    @EnumSource(mode = Mode.EXCLUDE, names = "NORMAL")
    void anAlarmIsAsItWas(AlarmState state) {
        board.restore(List.of(memory(state)), NOW);
        AlarmView view = board.views().get(0);
        assertEquals(state, view.state());
        assertEquals("kept", view.incident());
        assertEquals(T, view.since());
        assertEquals(List.of(), board.drain(), "a restart is no change");
    }

    @Test
    void whatTheRulesDoNotSeeAgainIsGoneFromNowOn() {
        board.restore(List.of(memory(AlarmState.ACKNOWLEDGED)), NOW);
        board.tick(NOW.plusSeconds(14));
        assertEquals(List.of(), board.drain());
        board.tick(NOW.plusSeconds(15));
        assertEquals(AlarmState.NORMAL, board.drain().get(0).state());
    }

    @Test
    void whatStoodAndIsSeenAgainStandsSinceItWasRaised() {
        seenAgain(T.plusSeconds(600));
        board.restore(List.of(memory(AlarmState.ACKNOWLEDGED)), NOW);
        assertEquals(T, board.views().get(0).since());
        board.tick(NOW.plusSeconds(600));
        assertEquals(List.of(), board.drain());
    }

    @Test
    void whatWentOnBehindAnAlarmThatWasSetAsideIsAsTheRulesSawIt() {
        seenAgain(T.plusSeconds(600));
        board.restore(List.of(memory(AlarmState.OUT_OF_SERVICE)), NOW);
        assertEquals(T.plusSeconds(600), board.views().get(0).since());
    }

    @Test
    void whatHadNotStoodIsForgottenAndCalledAnew() {
        seenAgain(T);
        board.restore(List.of(), NOW);
        assertEquals(List.of(), board.views());
        board.tick(NOW.plusSeconds(5));
        assertEquals(AlarmState.UNACKNOWLEDGED, board.drain().get(0).state());
    }

    @Test
    void aMemoryOfAnAlarmIsWhatBringsItBack() {
        seenAgain(T);
        AlarmMemory kept = board.memory(AlarmKind.PROBE_SILENT, "p");
        AlarmBoard fresh = new AlarmBoard();
        fresh.restore(List.of(kept), NOW);
        assertEquals(kept, fresh.memory(AlarmKind.PROBE_SILENT, "p"));
        assertEquals("silent again", kept.message());
    }
}
