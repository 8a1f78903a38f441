package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.Appetite;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.rules.event.OperatorEntry.BatchFill;
import bywash.rules.event.OperatorEntry.BatchTreat;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.Note;
import bywash.rules.event.OperatorEntry.Shelve;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.tui.view.Frame;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** From keys to entries. */
final class FormsTest {
    private final ScreenModel model = new ScreenModel();

    private List<OperatorEntry> entered(Frame frame, String keys) {
        return assertInstanceOf(Effect.Enter.class, Keys.press(model, frame, keys))
                .entries();
    }

    private String screen(Frame frame) {
        return Screens.draw(frame, model, false, 80, 24).text();
    }

    @Test
    void oneSheetEntersAllTestsThatWereMadeAndNoOthers() {
        assertEquals(
                List.of(
                        new WaterTest(Frames.NOW, "fish-tank", "total-ammonia", 0.5),
                        new WaterTest(Frames.NOW, "fish-tank", "nitrite", 0.25)),
                entered(Frames.quiet(), "mvvv0.5v0.25\n"));
        assertEquals("2 tests entered.", model.notice());
        assertEquals("Overview", model.page().title());
    }

    @Test
    void aTestFarFromTheLastOneIsAskedForAgain() {
        Keys.press(model, Frames.tested(), "mvvvv20\n");
        assertTrue(screen(Frames.tested()).contains("nitrite was 0.25 mg/L last time; is 20.00 mg/L typed"));
        assertEquals(1, entered(Frames.tested(), "\n").size());
    }

    @Test
    void whatAKitCannotShowIsNotTaken() {
        assertInstanceOf(Effect.Say.class, Keys.press(model, Frames.quiet(), "mvvvvvvv15\n\n"));
        assertTrue(model.notice().startsWith("pH: type a number, 0 to 14"), model.notice());
        Keys.press(model, Frames.quiet(), "#\n");
        assertTrue(
                screen(Frames.quiet()).contains("Tests") || model.page().title().equals("Overview"));
    }

    @Test
    void lastValuesAndWhatIsDueStandBesideTheFields() {
        Keys.press(model, Frames.tested(), "m");
        String text = screen(Frames.tested());
        assertTrue(text.contains("due in 3 d; last 0.25, 4 d ago"), text);
        assertTrue(text.contains("OVERDUE by 6 d; last 80, 20 d ago"), text);
        Keys.press(model, Frames.tested(), ">>>");
        assertTrue(screen(Frames.tested()).contains("DUE before release; last 0.00, 7 h ago"));
    }

    @Test
    void aCallOfAnAlarmThatIsStillNewIsNotRaisedAgain() {
        Frame frame = Frames.quiet();
        frame.log()
                .alarm(new AlarmTransition(
                        Frames.NOW.minusSeconds(60),
                        AlarmKind.LOW_OXYGEN,
                        "fish-tank",
                        AlarmState.UNACKNOWLEDGED,
                        AlarmKind.LOW_OXYGEN.priority(),
                        "i",
                        "dissolved-oxygen in fish-tank is 4.6 mg/L",
                        Map.of(AlarmTransition.ANNOUNCEMENT, 2.0)));
        Keys.press(model, frame, "l");
        assertTrue(screen(frame).contains("low-oxygen fish-tank: CALLS AGAIN."), screen(frame));
        Keys.press(model, frame, "\t");
        assertFalse(screen(frame).contains("low-oxygen"), "not among alarms raised");
    }

    @Test
    void feedWithProteinAndAppetite() {
        assertEquals(
                List.of(new Feed(Frames.NOW, 120, 0.42, null, Appetite.EAGER)),
                entered(Frames.quiet(), "nv\n120v42v>\n"));
        assertInstanceOf(Effect.Say.class, Keys.press(model, Frames.quiet(), "nn\n120v420\n"));
    }

    @Test
    void aBatchIsFilledAfterTheWarningAndNotBeyondTheReserve() {
        assertInstanceOf(Effect.Say.class, Keys.press(model, Frames.quiet(), "nvv\n600\n"));
        assertEquals(List.of(new BatchFill(Frames.NOW, "reserve", 600)), entered(Frames.quiet(), "\n"));
        Keys.press(model, Frames.quiet(), "n\n9999\n");
        assertTrue(model.notice().contains("at most the"), model.notice());
    }

    @Test
    void aChemicalNeedsItsAmountAndStandingTakesNone() {
        assertInstanceOf(Effect.Say.class, Keys.press(model, Frames.quiet(), "nvvv\nv12\n"));
        assertTrue(model.notice().contains("takes none"), model.notice());
        Keys.press(model, Frames.quiet(), "##^>>>>\n");
        assertTrue(model.notice().startsWith("Amount:"), model.notice());
        Keys.press(model, Frames.quiet(), "v4.5\n");
        assertEquals(
                List.of(new BatchTreat(Frames.NOW, "reserve", "thiosulfate", 4.5, 100)), entered(Frames.quiet(), "\n"));
    }

    @Test
    void inANoteLettersAreTextAndAlarmsCanStillBeAcknowledged() {
        assertEquals(
                List.of(new Note(Frames.NOW, "a quiet THING, 3 dots")),
                entered(Frames.valveOpen(), "nvvvv\na quiet THING, 3 dots\n"));
        Keys.press(model, Frames.valveOpen(), "\nhalf a note");
        model.handle(KeyPress.of(KeyPress.Kind.CONTROL_A), Frames.valveOpen());
        List<OperatorEntry> acknowledged = entered(Frames.valveOpen(), "a");
        assertEquals(2, acknowledged.size());
        assertInstanceOf(Acknowledge.class, acknowledged.get(0));
        assertTrue(screen(Frames.valveOpen()).contains("half a note"));
    }

    @Test
    void aCriticalAlarmIsShelvedOnlyAfterAWarning() {
        assertInstanceOf(Effect.Say.class, Keys.press(model, Frames.valveOpen(), "vvnvvvvv\nv>>\n"));
        assertEquals(
                List.of(new Shelve(Frames.NOW, "overflow-near", "sump", Duration.ofHours(4))),
                entered(Frames.valveOpen(), "\n"));
        ScreenModel other = new ScreenModel();
        Keys.press(other, Frames.quiet(), "nvvvvv\n");
        assertEquals("No alarm stands that could be shelved.", other.notice());
    }

    @Test
    void theRunningTopUpCountsDownVolumeAndTime() {
        Keys.press(model, Frames.topUpRunning(), "e");
        String text = screen(Frames.topUpRunning());
        assertTrue(text.contains("Volume  [##########..........] 81 L (78 to 84 L) of 160 L, 79 L to go"), text);
        assertTrue(text.contains("Time    [##########..........] 20 min of 40 min left"), text);
        Keys.press(model, Frames.topUpRunning(), "\n");
        assertEquals("End top-up", model.page().title());
        assertTrue(screen(Frames.topUpShut()).contains("Line shut: 0.0 +/- 0.3 L/min over 5 min; 158 L"));
    }

    @Test
    void theLogIsFilteredByKindAndByWord() {
        Keys.press(model, Frames.valveOpen(), "l");
        assertTrue(screen(Frames.valveOpen()).contains("RAISED")
                && screen(Frames.valveOpen()).contains("fed 180 g"));
        Keys.press(model, Frames.valveOpen(), "\t");
        assertFalse(screen(Frames.valveOpen()).contains("fed 180 g"));
        Keys.press(model, Frames.valveOpen(), "\t\t\nPRUNED\n");
        String text = screen(Frames.valveOpen());
        assertTrue(text.contains("bed-1 pruned") && !text.contains("fed 180 g") && !text.contains("RAISED"), text);
    }
}
