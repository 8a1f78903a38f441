package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.tui.view.Frame;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The log reaches back into what was recorded before this watch began. */
final class LogPageTest {
    private final ScreenModel model = new ScreenModel();
    private final List<Instant> asked = new ArrayList<>();
    private final Frame frame = LogFrames.recorded(asked);

    private String press(String keys) {
        Keys.press(model, frame, keys);
        return Screens.draw(frame, model, false, 80, 24).text();
    }

    @Test
    void whatWasBeforeThisWatchComesOutOfTheJournalOnce() {
        String text = press("l");
        assertTrue(text.contains("note: newest"), text);
        assertTrue(text.contains("!  05:20            watch started; nobody watched since 03:40 (1 h 40 min)"), text);
        assertTrue(text.contains("note: note 1599"), text);
        assertFalse(text.contains("played again"), "told by the journal, not a second time by memory");
        assertTrue(text.lines().toList().get(1).endsWith("+ below"), text);
    }

    @Test
    void theWholeYearIsThereAndItsBeginningIsSaid() {
        press("l");
        for (int i = 0; i < 200; i++) {
            model.handle(KeyPress.of(KeyPress.Kind.END), frame);
            Screens.draw(frame, model, false, 80, 24);
        }
        String text = Screens.draw(frame, model, false, 80, 24).text();
        assertTrue(text.contains("2025-03-30 06:10 note: note 0"), text);
        assertTrue(text.contains("The journal begins here."), text);
        assertTrue(asked.size() < 12, "asked in growing pieces: " + asked.size());
    }

    @Test
    void goesToADateTypedAndDayByDay() {
        String text = press("ld2026-01-05\n");
        assertTrue(text.contains("up to 2026-01-05"), text);
        assertTrue(text.lines().toList().get(2).contains("2026-01-05 23:10"), text);
        assertTrue(press("<").contains("up to 2026-01-04"));
        assertTrue(press(">>").contains("up to 2026-01-06"));
        assertTrue(press("d12-24\n").contains("up to 2025-12-24"), "the latest such day");
        assertFalse(press("d\n").contains("up to"), "no date: back to now");
        assertTrue(press("<").contains("up to 2026-05-03"));
        assertFalse(press(">").contains("up to"), "today ends now");
    }

    @Test
    void whatIsNoDateIsSaidAndTheLogStays() {
        press("ld2026-02-30\n");
        assertEquals("2026-02-30 is no date; type year, month and day as 2026-05-03, or 05-03.", model.notice());
        assertTrue(press("d2026~").contains("LOG  alarms and entries "), "Esc leaves the date open");
        assertEquals("Log", model.page().title());
    }

    @Test
    void searchesTheWholeRecordForWords() {
        String text = press("l\nnote 17\n");
        assertTrue(text.contains("note: note 17\n"), text);
        assertTrue(text.contains("The journal begins here."), text);
    }

    @Test
    void withoutAJournalThatIsSaid() {
        Keys.press(model, Frames.valveOpen(), "l");
        String text = Screens.draw(Frames.valveOpen(), model, false, 80, 24).text();
        assertTrue(text.contains("No journal is kept here"), text);
    }
}
