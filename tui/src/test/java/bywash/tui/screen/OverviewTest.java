package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.tui.view.Frame;
import bywash.tui.view.Losses;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the overview says, and what it must never say. */
final class OverviewTest {
    private static final String ALL_WELL = "Nothing is wrong";

    private static String text(Frame frame, int width, int height) {
        return Screens.draw(frame, new ScreenModel(), false, width, height).text();
    }

    @Test
    void allIsWellIsNeverSaidWhileAValueIsOutOfItsBandOrAlarmed() {
        for (int[] size : new int[][] {{80, 24}, {120, 40}, {40, 12}}) {
            assertTrue(text(Frames.quiet(), size[0], size[1]).contains(ALL_WELL));
            for (Frame frame : new Frame[] {
                Frames.oxygenLowNoAlarmYet(),
                Frames.waiting(),
                Frames.valveOpen(),
                Frames.probeSilent(),
                Frames.feedLost()
            }) {
                assertFalse(text(frame, size[0], size[1]).contains(ALL_WELL));
            }
        }
    }

    @Test
    void aLowValueIsNamedWithItsBandBeforeItsAlarm() {
        assertTrue(text(Frames.oxygenLowNoAlarmYet(), 80, 24)
                .contains("! fish-tank oxygen is LOW (4.6 mg/L, good: above 5.0). No alarm yet"));
    }

    @Test
    void aVesselWhoseProbeHasSentNothingYetIsNotCalledOneWithoutAProbe() {
        String text = text(Frames.waiting(), 80, 24);
        assertTrue(text.contains("no level probe: fish-tank 1500 L, bed-1 180 L\n"), text);
        assertTrue(text.lines().anyMatch(l -> l.matches(" +reserve +\\[ +\\].*waiting")), text);
    }

    @Test
    void aLostFeedIsInTheTopLineAtAnyWidth() {
        for (int width : new int[] {30, 40, 60, 80, 120}) {
            String top = top(Frames.feedLost(), width);
            assertTrue(top.contains("FEED LOST"), top);
        }
    }

    @Test
    void whatIsSetAsideIsCountedApartFromTheAlarmsThatAsk() {
        assertTrue(top(Frames.valveOpen(), 80).endsWith("3 alarms, 2 to ack"), top(Frames.valveOpen(), 80));
        assertTrue(
                top(Frames.someSetAside(), 80).endsWith("3 alarms, 2 to ack, 3 set aside"),
                top(Frames.someSetAside(), 80));
    }

    private static String top(Frame frame, int width) {
        return text(frame, width, 24).lines().findFirst().orElse("");
    }

    @Test
    void messagesLostOnTheWayAreCountedByKind() {
        assertEquals("none lost", Losses.NONE.words());
        assertEquals("dropped 1, refused 2, late 3", new Losses(1, 2, 3).words());
        assertTrue(text(Frames.losing(), 80, 24).contains("late 3"));
    }

    @Test
    void nothingIsCutAtEightyByTwentyFour() {
        for (Frame frame :
                new Frame[] {Frames.quiet(), Frames.valveOpen(), Frames.probeSilent(), Frames.topUpRunning()}) {
            String text = text(frame, 80, 24);
            assertFalse(text.contains("~") || text.contains("more]"), text);
            assertFalse(text.matches("(?s).*(WATER|VESSELS) \\d+ of \\d+.*"), text);
        }
    }

    @Test
    void aPageThatScrollsCutsNoLineAndSaysWhereItIs() {
        ScreenModel model = new ScreenModel();
        Keys.press(model, Frames.quiet(), "h");
        String whole = Screens.draw(Frames.quiet(), model, false, 80, 400).text();
        for (int i = 0; i < 40; i++) {
            List<String> rows = Screens.draw(Frames.quiet(), model, false, 80, 12)
                    .text()
                    .lines()
                    .toList();
            rows.subList(2, 11).forEach(row -> assertTrue(whole.contains(row), row));
            assertTrue(rows.get(1).endsWith(" below"), rows.get(1));
            assertEquals(i > 0, rows.get(1).contains(i + " above"), rows.get(1));
            Keys.press(model, Frames.quiet(), "v");
        }
    }

    @Test
    void aSmallScreenStillShowsAndAcknowledgesAlarms() {
        String text = text(Frames.valveOpen(), 40, 12);
        assertTrue(text.contains("DO NOW Shut the valve"), text);
        assertTrue(text.contains("unplanned-inflow sump"), text);
        assertTrue(text.lines().toList().get(11).contains("a ack"), text);
    }

    @Test
    void resizingKeepsThePlace() {
        ScreenModel model = new ScreenModel();
        Frame frame = Frames.valveOpen();
        Keys.press(model, frame, "v");
        Screens.draw(frame, model, false, 40, 12);
        Screens.draw(frame, model, false, 120, 40);
        assertEquals(1, model.choice().index(frame));
        Keys.press(model, frame, "h");
        Screens.draw(frame, model, false, 80, 10);
        Keys.press(model, frame, "vvvv");
        String before = Screens.draw(frame, model, false, 80, 10)
                .text()
                .lines()
                .toList()
                .get(2);
        assertEquals(
                before.replaceAll(" +\\[.*", ""),
                Screens.draw(frame, model, false, 90, 14)
                        .text()
                        .lines()
                        .toList()
                        .get(2)
                        .replaceAll(" +\\[.*", ""));
    }
}
