package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.detect.FlowFinding.Verdict;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class WaterBalanceTest {
    private final SmallSite site = new SmallSite(true).run(60);

    private static double minutes(Instant from, Instant to) {
        return Duration.between(from, to).toSeconds() / 60.0;
    }

    @Test
    void waterFromOutsideIsFoundWithItsRateItsLitresAndTheTimeToOverflow() {
        Instant onset = site.now();
        site.sumpFlowLMin = 4;
        assertTrue(site.until("sump", Verdict.UNPLANNED_INFLOW, 5) <= 4);
        site.run(6);
        FlowFinding f = site.finding("sump");
        assertEquals(4, f.rateLMin(), 3 * f.rateSeLMin() + 0.2);
        assertEquals(site.sumpL - 400, f.volumeL(), 8);
        assertEquals("outside", f.source());
        assertNotNull(f.overflowAt());
        assertNotNull(f.since());
        assertEquals((800 - site.sumpL) / 4, minutes(site.now(), f.overflowAt()), 12);
        assertEquals(0, minutes(onset, f.since()), 1.5);
    }

    @Test
    void aReserveThatFallsAsFastIsNamedAsTheSource() {
        site.release(4);
        site.until("sump", Verdict.UNPLANNED_INFLOW, 6);
        site.run(3);
        assertEquals("reserve", site.finding("sump").source());
        assertTrue(
                site.finding("sump").why().contains("reserve falls at"),
                site.finding("sump").why());
        assertEquals(Verdict.UNPLANNED_LOSS, site.finding("reserve").verdict());
    }

    @Test
    void aReserveThatFillsMoreSlowlyThanJustBeforeIsNamedAsTheSource() {
        site.reserveFlowLMin = 4;
        site.run(20);
        assertEquals(Verdict.PLANNED, site.finding("reserve").verdict());
        site.reserveFlowLMin = 1.5;
        site.sumpFlowLMin = 2.5;
        site.until("sump", Verdict.UNPLANNED_INFLOW, 10);
        site.run(5);
        FlowFinding f = site.finding("sump");
        assertEquals("reserve", f.source(), f.why());
        assertTrue(f.why().contains("reserve fills at 1."), f.why());
        assertTrue(f.why().contains("less than before"), f.why());
    }

    @Test
    void aReserveThatFillsAsFastAsBeforeIsNotTheSource() {
        site.reserveFlowLMin = 4;
        site.run(20);
        site.sumpFlowLMin = 2.5;
        site.until("sump", Verdict.UNPLANNED_INFLOW, 10);
        site.run(5);
        assertEquals(
                "outside", site.finding("sump").source(), site.finding("sump").why());
    }

    @Test
    void aFillingThatLeaksFromItsStartIsHeldAgainstTheFillingBefore() {
        site.reserveFlowLMin = 4;
        site.run(20);
        site.reserveFlowLMin = 0;
        site.run(20);
        site.reserveFlowLMin = 1.5;
        site.sumpFlowLMin = 2.5;
        site.until("sump", Verdict.UNPLANNED_INFLOW, 10);
        site.run(6);
        assertEquals(
                "reserve", site.finding("sump").source(), site.finding("sump").why());
    }

    @Test
    void withoutAnEarlierFillingTheSourceOfWaterWhileItFillsIsNotKnown() {
        site.reserveFlowLMin = 1.5;
        site.sumpFlowLMin = 2.5;
        site.until("sump", Verdict.UNPLANNED_INFLOW, 10);
        site.run(4);
        FlowFinding f = site.finding("sump");
        assertEquals("unknown", f.source(), f.why());
        assertTrue(f.why().contains("how fast it would fill without a leak is not known"), f.why());
        assertTrue(f.why().contains("counts as mains water"), f.why());
    }

    @Test
    void neverNamesOutsideWhileTheReserveMayBeTheSource() {
        site.release(3);
        site.until("sump", Verdict.UNPLANNED_INFLOW, 8);
        for (int i = 0; i < 60; i++) {
            site.run(0.25);
            assertNotEquals("outside", site.finding("sump").source());
        }
    }

    @Test
    void aLossSaysWhenThePumpRunsDry() {
        site.sumpFlowLMin = -5;
        assertTrue(site.until("sump", Verdict.UNPLANNED_LOSS, 5) <= 4);
        site.run(5);
        FlowFinding f = site.finding("sump");
        assertNotNull(f.dryAt());
        assertEquals(site.sumpL / 5, minutes(site.now(), f.dryAt()), 15);
    }

    @Test
    void aTopUpThatEndsAsDeclaredIsPlannedAndItsLineConfirmedShut() {
        site.topUp(60, 10);
        site.release(6);
        for (int i = 0; i < 10; i++) {
            site.run(1);
            assertEquals(Verdict.PLANNED, site.finding("sump").verdict());
        }
        site.release(0);
        site.endTopUp();
        site.run(30);
        TopUp topUp = site.balance.topUp();
        assertNotNull(topUp);
        assertTrue(topUp.confirmation().startsWith("Line shut"), topUp.confirmation());
        assertEquals(60, topUp.enteredL(), 6);
        assertEquals(Verdict.QUIET, site.finding("sump").verdict());
    }

    @Test
    void aLineThatRunsOnAfterTheEndIsSaidToAndAtWhatRate() {
        site.topUp(60, 10);
        site.release(6);
        site.run(10);
        site.endTopUp();
        site.release(1.5);
        assertTrue(site.until("sump", Verdict.LINE_NOT_SHUT, 12) < 12);
        site.run(3);
        TopUp topUp = site.balance.topUp();
        assertNotNull(topUp);
        assertTrue(topUp.confirmation().startsWith("The line is not shut"), topUp.confirmation());
        assertEquals(1.5, site.finding("sump").rateLMin(), 0.6);
    }

    @Test
    void aTopUpPastItsVolumeIsALineNotShut() {
        site.topUp(40, 10);
        site.release(6);
        double after = site.until("sump", Verdict.LINE_NOT_SHUT, 15);
        assertTrue(after > 40 / 6.0 && after < 11, "after " + after);
    }

    @Test
    void aPumpStopIsADrainDownAndNoInflow() {
        site.balance.pump(site.now(), false);
        for (int i = 0; i < 40; i++) {
            site.sumpFlowLMin = i < 8 ? 30 * StrictMath.exp(-i / 3.0) : 0;
            site.run(0.5);
            assertNotEquals(Verdict.UNPLANNED_INFLOW, site.finding("sump").verdict());
        }
        site.balance.pump(site.now(), true);
        site.run(30);
        assertEquals(Verdict.QUIET, site.finding("sump").verdict());
    }

    @Test
    void aRiseBeyondWhatPipesCanHoldIsAnInflowAfterAll() {
        site.balance.pump(site.now(), false);
        site.sumpFlowLMin = 12;
        double after = site.until("sump", Verdict.UNPLANNED_INFLOW, 15);
        assertTrue(after > 5 && after < 10, "after " + after);
    }

    @Test
    void whereNoProbeTellsOfThePumpARiseThatSlowsDownIsADrainDown() {
        SmallSite untold = new SmallSite(false).run(60);
        boolean drained = false;
        for (int i = 0; i < 60; i++) {
            untold.sumpFlowLMin = 30 * StrictMath.exp(-i / 6.0);
            untold.run(0.25);
            Verdict verdict = untold.finding("sump").verdict();
            assertNotEquals(Verdict.UNPLANNED_INFLOW, verdict);
            drained |= verdict == Verdict.DRAIN_DOWN;
        }
        assertTrue(drained);
    }

    @Test
    void aSilentProbeSaysThatNothingCanBeSaid() {
        site.sumpSilent = true;
        site.run(5);
        assertEquals(Verdict.LEARNING, site.finding("sump").verdict());
        assertTrue(site.finding("sump").why().contains("nothing can be said"));
    }

    @Test
    void readingsSentTwiceOrLateChangeNothing() {
        SmallSite same = new SmallSite(true);
        same.twiceAndLate = true;
        same.run(60);
        same.sumpFlowLMin = 4;
        site.sumpFlowLMin = 4;
        assertEquals(site.until("sump", Verdict.UNPLANNED_INFLOW, 6), same.until("sump", Verdict.UNPLANNED_INFLOW, 6));
        assertEquals(site.finding("sump"), same.finding("sump"));
    }
}
