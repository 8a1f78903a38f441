package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.rules.event.OperatorEntry.TopUpEnd;
import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.tui.screen.KeyPress.Kind;
import bywash.tui.view.Frame;
import bywash.tui.view.Playback;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
        assertEquals(
                List.of(
                        new Acknowledge(Frames.NOW, "unplanned-inflow", "sump"),
                        new Acknowledge(Frames.NOW, "overflow-near", "sump")),
                entries(press(Frames.valveOpen(), "aa")));
        assertEquals(page, model.page(), "stays where it was");
    }

    @Test
    void acknowledgesTheChosenOne() {
        assertEquals(
                List.of(new Acknowledge(Frames.NOW, "overflow-near", "sump")),
                entries(press(Frames.valveOpen(), "vva\n")));
    }

    @Test
    void escapeAfterTheFirstKeyAcknowledgesNothingAndStays() {
        assertInstanceOf(Effect.Redraw.class, press(Frames.valveOpen(), "\na~"));
        assertEquals("Alarm in full", model.page().title());
        assertInstanceOf(Effect.Redraw.class, press(Frames.valveOpen(), "\n"));
    }

    @Test
    void anAlarmThatComesBetweenTheTwoKeysIsNotTakenForTheChosenOne() {
        press(Frames.probeSilent(), "");
        press(Frames.valveOpen(), "a");
        assertEquals(
                List.of(new Acknowledge(Frames.NOW, "unplanned-inflow", "sump")),
                entries(press(Frames.probeSilent(), "\n")));
    }

    @Test
    void anAlarmThatComesBetweenTheTwoKeysIsNotAmongAll() {
        press(Frames.hostile(), "a");
        assertEquals(
                List.of(new Acknowledge(Frames.NOW, "feed-lost", "feed\u001b[2J")),
                entries(press(Frames.valveOpen(), "a")));
    }

    @Test
    void anOpenedAlarmThatClearsIsNotReplacedByAnother() {
        press(Frames.valveOpen(), "\n");
        String text = Screens.draw(Frames.probeSilent(), model, false, 80, 24).text();
        assertTrue(text.contains("This alarm has returned to normal."), text);
    }

    @Test
    void nothingToAcknowledgeIsSaid() {
        assertInstanceOf(Effect.Say.class, press(Frames.quiet(), "aa"));
        assertEquals("Nothing to acknowledge.", model.notice());
    }

    @Test
    void tabChoosesTheNextAlarmThatIsNew() {
        press(Frames.valveOpen(), "\t");
        assertEquals(2, model.choice().index(Frames.valveOpen()));
        press(Frames.valveOpen(), "\t");
        assertEquals(0, model.choice().index(Frames.valveOpen()));
    }

    @Test
    void unsafeWaterTakesASecondConfirmation() {
        assertInstanceOf(Effect.Say.class, press(Frames.quiet(), "t160\t40\n"));
        assertEquals("Top-up", model.page().title());
        assertEquals(
                List.of(new TopUpStart(Frames.NOW, "sump", "reserve", 160, Duration.ofMinutes(40))),
                entries(press(Frames.quiet(), "\n")));
        assertEquals("Overview", model.page().title());
    }

    @Test
    void aChangeAfterTheWarningAsksAgain() {
        press(Frames.quiet(), "t160\t40\n");
        press(Frames.quiet(), "#5");
        assertInstanceOf(Effect.Say.class, press(Frames.quiet(), "\n"));
    }

    @Test
    void whatDoesNotFitOrIsNoNumberIsNotDeclared() {
        assertInstanceOf(Effect.Say.class, press(Frames.quiet(), "t900\t40\n\n\n"));
        assertEquals("Top-up", model.page().title());
        press(Frames.quiet(), "~t1.2.3\t40\n\n");
        assertEquals("Top-up", model.page().title());
        assertTrue(model.notice().startsWith("Volume:"), model.notice());
    }

    @Test
    void endsARunningTopUpAndRefusesASecond() {
        press(Frames.topUpRunning(), "t");
        assertEquals("Overview", model.page().title());
        assertEquals(List.of(new TopUpEnd(Frames.NOW, "sump")), entries(press(Frames.topUpRunning(), "e\n")));
    }

    @Test
    void leavesOnlyAfterAsking() {
        assertInstanceOf(Effect.Back.class, press(Frames.quiet(), "qqq~"));
        assertEquals("Overview", model.page().title());
        assertInstanceOf(Effect.Quit.class, press(Frames.quiet(), "qy"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"INTERRUPT", "HANG_UP"})
    void interruptAndHangUpLeaveAtOnce(String kind) {
        press(Frames.quiet(), "t");
        assertInstanceOf(Effect.Quit.class, model.handle(KeyPress.of(Kind.valueOf(kind)), Frames.quiet()));
    }

    @Test
    void eachBackTakesOnePageOff() {
        press(Frames.valveOpen(), "\nhq~~");
        assertEquals("Alarm in full", model.page().title());
    }

    @Test
    void noKeyMeansTwoThingsOnOnePage() {
        for (Page page : model.pages().all()) {
            page.opened(Frames.valveOpen());
            List<Binding> all = new ArrayList<>(page.keys());
            all.addAll(model.pages().everywhere(page.typing()));
            List<KeyPress> keys = all.stream().flatMap(b -> b.keys().stream()).toList();
            assertEquals(keys.stream().distinct().toList(), keys, page.title());
        }
    }

    @Test
    void everyKeyOfEveryPageIsInTheHelp() {
        press(Frames.quiet(), "h");
        String help = Screens.draw(Frames.quiet(), model, false, 120, 400).text();
        for (Page page : model.pages().all()) {
            String flowing = help.replaceAll("\\s+", " ");
            boolean scrollsOnly =
                    page instanceof ScrollPage scroll && scroll.ownKeys().isEmpty();
            assertTrue(scrollsOnly || flowing.contains(page.title().toUpperCase(Locale.ROOT)), page.title());
            for (Binding binding : page.keys()) {
                assertTrue(help.contains(binding.labels()) && help.contains(binding.sentence()), binding.sentence());
            }
        }
        model.pages().everywhere(false).forEach(b -> assertTrue(help.contains(b.sentence()), b.sentence()));
    }

    @Test
    void everyPageIsReachedFromEveryOtherByItsLetterAndHasItsOwnName() {
        List<Page> all = model.pages().all();
        assertEquals(all.size(), all.stream().map(Page::title).distinct().count());
        for (Page page : all) {
            if (page.letter() != null && page.shut(Frames.quiet()).isEmpty()) {
                press(Frames.quiet(), String.valueOf((char) page.letter()));
                assertEquals(page, model.page());
            }
        }
    }

    @Test
    void theBottomLineKeepsAcknowledgingAndHelpWhenItIsNarrow() {
        for (Page page : model.pages().all()) {
            for (int width : new int[] {30, 40, 80, 120}) {
                String line = Bars.line(page.keys(), model.pages().everywhere(page.typing()), width);
                assertTrue(line.length() <= width, line);
                assertTrue(page.typing() || line.contains("a ack") && line.contains("h help"), line);
            }
        }
    }

    @Test
    void aReplayIsPausedFromAnyPageAndLiveWaterIsNot() {
        assertEquals(new Effect.Play(Playback.Command.PAUSE), press(Frames.replay(), "g "));
        assertEquals(new Effect.Play(Playback.Command.NEXT_ALARM), press(Frames.replay(), "j"));
        assertEquals(new Effect.Play(Playback.Command.STEP), press(Frames.replay(), "i."));
        assertInstanceOf(Effect.Say.class, press(Frames.quiet(), " "));
    }

    private static List<OperatorEntry> entries(Effect effect) {
        return assertInstanceOf(Effect.Enter.class, effect).entries();
    }
}
