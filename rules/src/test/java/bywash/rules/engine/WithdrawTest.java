package bywash.rules.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.event.EngineEvent.OperatorActed;
import bywash.rules.event.EngineEvent.Tick;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BatchFill;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.husbandry.Sites;
import bywash.rules.site.Stocking;
import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What an entry changed in the rules is put back when it is taken back, or goes to the safe side. */
class WithdrawTest {
    private static final Instant START = Instant.parse("2026-05-04T06:00:00Z");

    private final Engine engine = new Engine(Sites.site());
    private Instant now = START;

    private void enter(OperatorEntry entry) {
        now = entry.at().isAfter(now) ? entry.at() : now;
        engine.apply(new OperatorActed(entry));
    }

    private void pass(Duration time) {
        for (Instant end = now.plus(time); now.isBefore(end); ) {
            now = now.plusSeconds(5);
            engine.apply(new Tick(now));
        }
    }

    private static Instant at(int minutes) {
        return START.plus(Duration.ofMinutes(minutes));
    }

    private boolean standing(AlarmKind kind) {
        return engine.snapshot().alarms().stream()
                .anyMatch(a -> a.kind() == kind && a.state() == AlarmState.UNACKNOWLEDGED);
    }

    @Test
    void aReserveWhoseTestIsTakenBackIsNoLongerSafe() {
        enter(new BatchFill(at(0), "reserve", 500));
        enter(new WaterTest(at(1), "reserve", "total-chlorine", 0));
        assertEquals(Set.of("reserve"), engine.safeReserves());
        enter(new Withdraw(at(2), "test", at(1), 1, "read the wrong cup"));
        assertEquals(Set.of(), engine.safeReserves());
    }

    @Test
    void theResidualIsWidenedToWhatWasBelievedBeforeTheTest() {
        pass(Duration.ofMinutes(1));
        double before = engine.snapshot().residual().highUgL();
        enter(new WaterTest(at(2), "fish-tank", "total-chlorine", 0.5));
        pass(Duration.ofMinutes(1));
        double tested = engine.snapshot().residual().highUgL();
        assertTrue(tested > before + 100, tested + " after, " + before + " before");
        enter(new WaterTest(at(4), "fish-tank", "total-chlorine", 0));
        pass(Duration.ofSeconds(5));
        assertTrue(engine.snapshot().residual().highUgL() < 60, "a test counts at the next tick");
        enter(new Withdraw(now, "test", at(4), 1, ""));
        pass(Duration.ofSeconds(5));
        assertTrue(engine.snapshot().residual().highUgL() > 300);
    }

    @Test
    void theTestBeforeHoldsAgain() {
        enter(new WaterTest(at(0), "fish-tank", "nitrite", 0.2));
        enter(new WaterTest(at(1), "fish-tank", "nitrite", 20));
        pass(Duration.ofMinutes(2));
        assertTrue(standing(AlarmKind.NITRITE_HIGH));
        enter(new Withdraw(now, "test", at(1), 1, "0.2 was meant"));
        pass(Duration.ofMinutes(20));
        assertFalse(standing(AlarmKind.NITRITE_HIGH));
    }

    @Test
    void aTestThatComesLateBehindANewerOneChangesNothing() {
        enter(new WaterTest(at(10), "fish-tank", "nitrite", 0.2));
        enter(new WaterTest(at(5), "fish-tank", "nitrite", 20));
        enter(new WaterTest(at(10), "reserve", "total-chlorine", 0.8));
        enter(new WaterTest(at(5), "reserve", "total-chlorine", 0));
        pass(Duration.ofMinutes(2));
        assertFalse(standing(AlarmKind.NITRITE_HIGH));
        assertEquals(Set.of(), engine.safeReserves());
    }

    @Test
    void theAmmoniaThatWasNeverThereRaisesNothing() {
        enter(new WaterTest(at(0), "fish-tank", "ph", 8.2));
        enter(new WaterTest(at(0), "fish-tank", "temperature", 25));
        enter(new WaterTest(at(1), "fish-tank", "total-ammonia", 30));
        pass(Duration.ofMinutes(2));
        assertTrue(standing(AlarmKind.AMMONIA_TOXIC));
        enter(new Withdraw(now, "test", at(1), 1, ""));
        pass(Duration.ofMinutes(20));
        assertFalse(standing(AlarmKind.AMMONIA_TOXIC));
    }

    @Test
    void theStockingGoesBackToWhatItWas() {
        enter(new StockingChange(at(0), Stocking.FISHLESS));
        assertEquals(Stocking.FISHLESS, engine.snapshot().stocking());
        enter(new Withdraw(at(1), "stocking", at(0), 1, ""));
        assertEquals(Stocking.FISH, engine.snapshot().stocking());
        enter(new StockingChange(at(10), Stocking.FISHLESS));
        enter(new StockingChange(at(5), Stocking.FISH));
        assertEquals(Stocking.FISHLESS, engine.snapshot().stocking());
    }
}
