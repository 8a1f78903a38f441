package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class RehearsalTest {
    @Test
    void raisesAndClearsItsAlarmEachTime() {
        int lines = Rehearsal.run();
        assertTrue(lines >= 80, () -> lines + " alarm lines");
    }
}
