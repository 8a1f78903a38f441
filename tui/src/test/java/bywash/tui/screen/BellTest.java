package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

final class BellTest {
    private final ScreenModel model = new ScreenModel();
    private final Bell bell = model.bell();

    @Test
    void ringsOnceForWhatIsNewAndNotForWhatIsAcknowledged() {
        assertTrue(bell.rings(Frames.valveOpen()));
        assertFalse(bell.rings(Frames.valveOpen()));
        assertFalse(bell.rings(Frames.probeSilent()), "acknowledged already");
        assertTrue(bell.rings(Frames.valveOpen()), "new again");
    }

    @Test
    void isSilencedByItsKeyWhichTheTopLineSays() {
        Keys.press(model, Frames.quiet(), "k");
        assertFalse(bell.rings(Frames.valveOpen()));
        assertTrue(top().contains("bell off"), top());
        Keys.press(model, Frames.quiet(), "k");
        assertFalse(bell.rings(Frames.valveOpen()), "what was new while it was silent is no news");
        assertFalse(top().contains("bell off"));
    }

    private String top() {
        return Screens.draw(Frames.quiet(), model, false, 80, 24)
                .text()
                .lines()
                .findFirst()
                .orElse("");
    }
}
