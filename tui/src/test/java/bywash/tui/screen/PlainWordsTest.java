package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.chlorine.Crossing;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.tui.view.Frame;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a screen says in words agrees with the figures beside it, and claims no more than they do. */
final class PlainWordsTest {
    private static final Instant NOW = Frames.NOW;

    @Test
    void whatOnlyPartOfTheRangeIsAboveIsLikely() {
        String part = page(Frames.valveOpen(estimate(12, 22, 49, Crossing.none(19))), "x");
        assertTrue(part.contains("!! LIKELY ABOVE ACUTE"), part);
        String all = page(Frames.valveOpen(estimate(29, 56, 121, Crossing.none(19))), "x");
        assertTrue(all.contains("!! ABOVE ACUTE"), all);
    }

    @Test
    void noForecastIsToldToTheSecond() {
        Crossing near = new Crossing(19, true, NOW, NOW.plusSeconds(4), null);
        String page = page(Frames.valveOpen(estimate(7, 18, 24, near)), "x");
        assertTrue(page.contains("Ahead      19 ug/L within a minute (at worst passed already)"), page);
        assertTrue(page.contains("RISING: 19 ug/L within a minute"), page);
        Crossing later = new Crossing(19, true, NOW.plusSeconds(20), NOW.plusSeconds(400), null);
        String second = page(Frames.valveOpen(estimate(7, 13, 18.9, later)), "x");
        assertTrue(second.contains("19 ug/L in 6 min (within a minute at worst)"), second);
        Crossing both = new Crossing(19, true, NOW.plusSeconds(2), NOW.plusSeconds(40), null);
        String third = page(Frames.valveOpen(estimate(7, 18, 18.9, both)), "x");
        assertFalse(third.contains("at worst"), third);
    }

    @Test
    void aForecastThatTheProbesDoNotBearOutIsOneOfTheBalanceAlone() {
        Crossing near = new Crossing(19, true, NOW, NOW.plusSeconds(20), null);
        ResidualEstimate doubted = new ResidualEstimate(
                0, 1, 68, 0.1, near.likely(), List.of("Balance: 51 L came in"), near, Crossing.none(11), 18);
        String page = page(Frames.valveOpen(doubted), "x");
        assertTrue(page.contains("MAY RISE: 19 ug/L within a minute"), page);
        assertTrue(page.contains("Ahead      by the balance alone 19 ug/L within a minute (at worst passed"), page);
    }

    @Test
    void aTopUpThatWasEndedRunsNoLonger() {
        String page = page(Frames.topUpChecked(), "");
        assertTrue(page.contains("checking"), page);
        assertTrue(page.contains("Top-up ended 06:09. Line not yet confirmed shut, watched until about 06:13."), page);
        assertTrue(
                page.lines()
                        .anyMatch(line ->
                                line.contains("sump") && line.contains("-- L/min") && line.contains("checking")),
                "the rate of the line is not that of the vessel: " + page);
        assertFalse(page.contains("Nothing is wrong"), "what is being checked is not known yet: " + page);
        assertTrue(page.contains("is watched until about 06:13, 06:34 at the latest; look at"), page);
    }

    @Test
    void chlorineThatNothingCanShowIsNoZero() {
        String page = page(Frames.levelNotCredible(), "");
        assertTrue(page.contains("not known: no level to judge by"), page);
        assertTrue(page.contains("chance above acute: not known"), page);
        assertFalse(page.lines().anyMatch(line -> line.startsWith("low 0.0")), page);
    }

    @Test
    void aVesselWhoseLevelCannotBeBelievedIsNotSteady() {
        String page = page(Frames.levelNotCredible(), "");
        assertTrue(page.contains("-- L    -- L/min     -- mm     no level"), page);
    }

    @Test
    void aVesselWithRoomLeftDoesNotSpillNow() {
        String page = page(Frames.betweenTwoSpills(), "");
        assertTrue(page.contains("44 mm     INFLOW     spill soon"), page);
    }

    @Test
    void whatNoLongerHoldsIsNotToldAsIfItDid() {
        String page = page(Frames.eased(), "");
        assertTrue(page.contains("!! Not so since 06:06, over if that lasts: sump has 12 mm of freeboard left"), page);
        assertTrue(page.contains("Left: it has eased."), page);
    }

    @Test
    void chlorineIsNotCalledLowWhereNoLevelCouldShowAnInflow() {
        String page = page(Frames.waiting(), "");
        assertTrue(page.contains("not known: no level to judge by"), page);
        assertFalse(page.contains("below both criteria"), page);
    }

    @Test
    void noValueOfBeforeALossIsCalledGood() {
        String page = page(Frames.feedLost(), "");
        assertTrue(page.contains("6.2 to 7.4   not fresh"), page);
        assertFalse(page.contains(" good   ") || page.contains("steady"), page);
        assertTrue(page.contains("not known: the feed is lost"), page);
    }

    @Test
    void whatIsOverAsksForNothingButAnAnswer() {
        String page = page(Frames.feedBack(), "");
        assertTrue(page.contains("Over, not yet acknowledged. It was: The feed is lost: connection refused"), page);
        assertTrue(page.contains("DO NOW Acknowledge it (a) once you know why it came."), page);
    }

    @Test
    void theTestThatTheEstimateGoesOnFromIsNamed() {
        assertTrue(page(Frames.valveOpen(), "x").contains("Last test  none of the loop on record"));
        String page = page(Frames.chlorineTested(), "x");
        assertTrue(page.contains("Last test  0.05 mg/L in fish-tank, 05:50 (20 min ago)"), page);
    }

    @Test
    void theRationIsNoAdviceWhileTheFeedIsHeld() {
        Frame frame = SeasonFrames.stocked(Frames.oxygenAlarm());
        String feed = page(frame, "f");
        assertTrue(feed.contains("! Now      Hold the feed while low-oxygen fish-tank stands."), feed);
        String form = page(frame, "nv\n");
        assertTrue(form.contains("Hold the feed while low-oxygen fish-tank stands."), form);
        assertFalse(page(SeasonFrames.stocked(), "f").contains("Hold the feed"), "else it is");
    }

    private static String page(Frame frame, String keys) {
        ScreenModel model = new ScreenModel();
        Keys.press(model, frame, keys);
        return Screens.draw(frame, model, true, 80, 24).text();
    }

    private static ResidualEstimate estimate(double low, double likely, double high, Crossing acute) {
        return new ResidualEstimate(
                low, likely, high, 0.6, acute.likely(), List.of("Balance: 40 L came in"), acute, Crossing.none(11));
    }
}
