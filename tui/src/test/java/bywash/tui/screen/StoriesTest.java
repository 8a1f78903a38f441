package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmView;
import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.tui.view.AlarmDetail;
import bywash.tui.view.AlarmKey;
import bywash.tui.view.Frame;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Alarms of one cause stand together, and are acknowledged together or one by one. */
final class StoriesTest {
    private final ScreenModel model = new ScreenModel();

    private static List<String> list(ScreenModel model, Frame frame) {
        return Screens.draw(frame, model, false, 80, 24)
                .text()
                .lines()
                .filter(l -> l.matches(".*(new|acked|over) \\d\\d:\\d\\d$"))
                .map(l -> l.substring(39).replaceAll("  +(new|acked|over)", " $1"))
                .toList();
    }

    @Test
    void theFirstCauseStandsOnTopAndWhatFollowedIsIndented() {
        assertEquals(
                List.of(
                        " !! unplanned-inflow sump acked 06:09",
                        "   !! chlorine-risk system acked 06:05",
                        ">  !! overflow-near sump new 06:08",
                        " !  probe-stuck fish-orp new 05:40"),
                list(model, Frames.twoIncidents()));
    }

    @Test
    void waterThatRunsRunsSinceItsOnsetNotSinceItsAlarm() {
        Frame frame = Frames.twoIncidents();
        AlarmView inflow = frame.snapshot().alarms().stream()
                .filter(a -> a.kind() == AlarmKind.UNPLANNED_INFLOW)
                .findFirst()
                .orElseThrow();
        assertEquals(
                "06:02 (8 min), raised 06:09", AlarmDetail.from(inflow, frame).since());
        AlarmView near = frame.snapshot().alarms().stream()
                .filter(a -> a.kind() == AlarmKind.OVERFLOW_NEAR)
                .findFirst()
                .orElseThrow();
        assertEquals("06:08 (2 min)", AlarmDetail.from(near, frame).since());
    }

    @Test
    void theCursorBeginsAtTheFirstThingWrongAndEnterOpensIt() {
        Keys.press(model, Frames.twoIncidents(), "\n");
        assertTrue(Screens.draw(Frames.twoIncidents(), model, false, 80, 24)
                .text()
                .contains("ALARM overflow-near sump (3 of 4)"));
    }

    @Test
    void theCursorStaysOnItsAlarmWhenTheListChanges() {
        Keys.press(model, Frames.twoIncidents(), "vv");
        assertEquals(3, model.choice().index(Frames.twoIncidents()));
        Keys.press(model, Frames.twoIncidents(), "^");
        AlarmKey key = model.choice().key();
        assertEquals(2, model.choice().index(Frames.twoIncidents()));
        assertEquals(2, model.choice().index(Frames.valveOpen()));
        assertEquals(key, model.choice().key());
        assertEquals(
                0, model.choice().index(Frames.probeSilent()), "gone: what stands in its place, here the only one");
    }

    @Test
    void aWholeIncidentIsAcknowledgedAndTheOtherStays() {
        Effect effect = Keys.press(model, Frames.twoIncidents(), "ai");
        Effect.Enter enter = assertInstanceOf(Effect.Enter.class, effect);
        assertEquals(List.of(new Acknowledge(Frames.NOW, "overflow-near", "sump")), enter.entries());
        effect = Keys.press(model, Frames.valveOpen(), "ai");
        enter = assertInstanceOf(Effect.Enter.class, effect);
        assertEquals(2, enter.entries().size());
    }

    @Test
    void ofTwoTimesToOneOverflowOnlyTheSoonerIsShown() {
        AlarmDetail detail = AlarmDetail.first(
                Frames.withDeadlines(Frames.NOW.plusSeconds(22 * 60), Frames.NOW.plusSeconds(18 * 60)));
        assertEquals("18 min to overflow of sump (06:28)", detail == null ? "" : detail.left());
    }

    @Test
    void aFullSumpIntoWhichNothingRunsComesAfterChlorine() {
        Frame frame = Frames.inflowOver();
        assertEquals(
                List.of(AlarmKind.OVERFLOW_NEAR, AlarmKind.CHLORINE_RISK),
                frame.snapshot().alarms().stream().map(AlarmView::kind).toList());
        AlarmKey first = AlarmDetail.firstKey(frame);
        assertEquals(AlarmKind.CHLORINE_RISK, first == null ? null : first.kind());
    }

    @Test
    void aSumpWithRoomLeftOverflowsAtTheTopOfItsSwing() {
        AlarmDetail detail = AlarmDetail.first(Frames.withDeadlines(Frames.NOW, Frames.NOW));
        assertEquals("overflow of sump now or at its next swing", detail == null ? "" : detail.left());
    }

    @Test
    void theDetailSaysWhatItFollowedAndWhatFollowedIt() {
        Keys.press(model, Frames.valveOpen(), "\n");
        String first = Screens.draw(Frames.valveOpen(), model, false, 80, 40).text();
        assertTrue(first.contains("Followed by  !! chlorine-risk system, acked 06:05"), first);
        assertFalse(first.contains("It followed"), first);
        Keys.press(model, Frames.valveOpen(), ">");
        String next = Screens.draw(Frames.valveOpen(), model, false, 80, 40).text();
        assertTrue(next.contains("Cause        It followed unplanned-inflow sump, see there."), next);
    }
}
