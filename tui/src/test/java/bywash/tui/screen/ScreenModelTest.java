package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.rules.event.OperatorEntry.TopUpEnd;
import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.tui.screen.KeyPress.Kind;
import bywash.tui.view.Frame;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class ScreenModelTest {
    private final ScreenModel model = new ScreenModel();

    private Effect press(Frame frame, String keys) {
        return Keys.press(model, frame, keys);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n", "t", "t12\t", "h", "q", "e"})
    void acknowledgesAllWithTwoKeysFromAnywhere(String before) {
        press(Frames.valveOpen(), before);
        Page page = model.page();
        assertEquals(new Effect.Enter(new Acknowledge(Frames.NOW, null, null)), press(Frames.valveOpen(), "aa"));
        assertEquals(page, model.page(), "stays where it was");
    }

    @Test
    void acknowledgesTheChosenOne() {
        assertEquals(
                new Effect.Enter(new Acknowledge(Frames.NOW, "overflow-near", "sump")),
                press(Frames.valveOpen(), "va\n"));
    }

    @Test
    void escapeAfterTheFirstKeyAcknowledgesNothingAndStays() {
        assertInstanceOf(Effect.Redraw.class, press(Frames.valveOpen(), "\na~"));
        assertEquals(Page.DETAIL, model.page());
        assertInstanceOf(Effect.Redraw.class, press(Frames.valveOpen(), "\n"));
    }

    @Test
    void anAlarmThatComesBetweenTheTwoKeysIsNotTakenForTheChosenOne() {
        press(Frames.probeSilent(), "");
        press(Frames.valveOpen(), "a");
        assertEquals(
                new Effect.Enter(new Acknowledge(Frames.NOW, "unplanned-inflow", "sump")),
                press(Frames.probeSilent(), "\n"));
    }

    @Test
    void anOpenedAlarmThatClearsIsNotReplacedByAnother() {
        press(Frames.valveOpen(), "\n");
        String text = Screens.draw(Frames.probeSilent(), model, false, 80, 24).text();
        assertTrue(text.contains("This alarm has returned to normal."), text);
    }

    @Test
    void nothingToAcknowledgeIsSaid() {
        assertInstanceOf(Effect.Redraw.class, press(Frames.quiet(), "aa"));
        assertEquals("Nothing to acknowledge.", model.notice());
    }

    @Test
    void tabChoosesTheNextAlarmThatIsNew() {
        press(Frames.valveOpen(), "\t");
        assertEquals(1, model.index(Frames.valveOpen().snapshot().alarms()));
        press(Frames.valveOpen(), "\t");
        assertEquals(0, model.index(Frames.valveOpen().snapshot().alarms()));
    }

    @Test
    void unsafeWaterTakesASecondConfirmation() {
        assertInstanceOf(Effect.Redraw.class, press(Frames.quiet(), "t160\t40\n"));
        assertEquals(Page.TOP_UP, model.page());
        assertEquals(
                new Effect.Enter(new TopUpStart(Frames.NOW, "sump", "reserve", 160, Duration.ofMinutes(40))),
                press(Frames.quiet(), "\n"));
        assertEquals(Page.OVERVIEW, model.page());
    }

    @Test
    void aChangeAfterTheWarningAsksAgain() {
        press(Frames.quiet(), "t160\t40\n");
        press(Frames.quiet(), "#5");
        assertInstanceOf(Effect.Redraw.class, press(Frames.quiet(), "\n"));
    }

    @Test
    void whatDoesNotFitOrIsNoNumberIsNotDeclared() {
        assertInstanceOf(Effect.Redraw.class, press(Frames.quiet(), "t900\t40\n\n\n"));
        assertEquals(Page.TOP_UP, model.page());
        press(Frames.quiet(), "~t1.2.3\t40\n\n");
        assertEquals(Page.TOP_UP, model.page());
        assertTrue(model.notice().startsWith("Volume:"), model.notice());
    }

    @Test
    void endsARunningTopUpAndRefusesASecond() {
        press(Frames.topUpRunning(), "t");
        assertEquals(Page.OVERVIEW, model.page());
        assertEquals(new Effect.Enter(new TopUpEnd(Frames.NOW, "sump")), press(Frames.topUpRunning(), "e\n"));
    }

    @Test
    void leavesOnlyAfterAsking() {
        assertInstanceOf(Effect.Redraw.class, press(Frames.quiet(), "qqq~"));
        assertEquals(Page.OVERVIEW, model.page());
        assertInstanceOf(Effect.Quit.class, press(Frames.quiet(), "qy"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"INTERRUPT", "HANG_UP"})
    void interruptAndHangUpLeaveAtOnce(String kind) {
        press(Frames.quiet(), "t");
        assertInstanceOf(Effect.Quit.class, model.handle(KeyPress.of(Kind.valueOf(kind)), Frames.quiet()));
    }

    @Test
    void helpAndLeaveGoBackToWhereOneCameFrom() {
        press(Frames.valveOpen(), "\nhq~");
        assertEquals(Page.DETAIL, model.page());
    }

    @Test
    void noKeyMeansTwoThingsOnOnePage() {
        for (Page page : Page.values()) {
            long keys =
                    KeyMap.on(page).stream().map(KeyMap.Binding::key).distinct().count();
            assertEquals(KeyMap.on(page).size(), keys, page.title());
        }
    }

    @Test
    void everyCommandCanBeReachedAndIsInTheHelp() {
        String help = String.join("\n", HelpScreen.lines());
        for (Command command : Command.values()) {
            assertTrue(help.contains(command.sentence()), command.name());
        }
        assertFalse(KeyMap.line(Page.OVERVIEW, 80).isEmpty());
        assertTrue(KeyMap.line(Page.OVERVIEW, 30).endsWith("h help"));
    }
}
