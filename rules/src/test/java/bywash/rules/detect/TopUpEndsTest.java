package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.detect.FlowFinding.Verdict;
import java.time.Duration;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Every way a declared top-up can end, and what the balance says of its line then. */
class TopUpEndsTest {
    private final SmallSite site = new SmallSite(true).run(60);

    private TopUp topUp() {
        return Objects.requireNonNull(site.balance.topUp());
    }

    private String words() {
        return topUp().confirmation();
    }

    private void runsAsDeclared(double litres, double minutes, double rate) {
        site.topUp(litres, minutes);
        site.release(rate);
    }

    @Test
    void endedByEntryAtItsVolumeTheLineIsConfirmedShutWithWhatCameIn() {
        runsAsDeclared(60, 10, 6);
        site.run(10);
        site.release(0);
        site.endTopUp();
        site.run(12);
        assertTrue(words().startsWith("Line shut: "), words());
        assertTrue(words().contains(" L) came in"), words());
        assertEquals(60, topUp().enteredL(), 2 * topUp().enteredSeL() + 1);
        assertEquals(Verdict.QUIET, site.finding("sump").verdict());
        assertEquals(Verdict.QUIET, site.finding("reserve").verdict());
    }

    @Test
    void atItsVolumeAndStillFlowingItIsALineNotShut() {
        runsAsDeclared(40, 10, 6);
        double after = site.until("sump", Verdict.LINE_NOT_SHUT, 15);
        assertTrue(after < 11, "after " + after);
        site.run(2);
        assertEquals(Verdict.LINE_NOT_SHUT, site.finding("sump").verdict());
        FlowFinding f = site.finding("sump");
        assertEquals(site.sumpL - 400, f.volumeL(), 6);
        assertEquals(40, f.declaredL());
        double more = site.sumpL - 440;
        assertTrue(f.beyond().lowL() <= more && more <= f.beyond().highL(), more + " in " + f.beyond());
        assertTrue(f.why().startsWith("Declared: 40 L. Came in: "), f.why());
        assertTrue(f.why().endsWith(f.beyond().words() + " of them more than declared."), f.why());
        assertEquals(-40, site.finding("reserve").declaredL());
        site.release(0);
        site.endTopUp();
        site.run(12);
        assertTrue(words().startsWith("Line shut: "), words());
        assertTrue(words().endsWith(" L) of them more than declared"), words());
    }

    @Test
    void whatWillBeInBeforeTheBrimIsReachedIsNoOverflowToCome() {
        runsAsDeclared(60, 10, 6);
        site.run(5);
        assertEquals(Verdict.PLANNED, site.finding("sump").verdict());
        assertNull(site.finding("sump").overflowAt());
        site.run(8);
        assertEquals(Verdict.LINE_NOT_SHUT, site.finding("sump").verdict());
        assertNotNull(site.finding("sump").overflowAt(), "past its volume nothing says when it ends");
    }

    @Test
    void aDeclaredVolumeThatDoesNotFitIsSaidToSpill() {
        site.sumpL = 700;
        site.run(30);
        runsAsDeclared(200, 40, 5);
        site.run(5);
        FlowFinding f = site.finding("sump");
        assertEquals(Verdict.PLANNED, f.verdict());
        assertNotNull(f.overflowAt());
        assertEquals(15, Duration.between(site.now(), f.overflowAt()).toSeconds() / 60.0, 2);
    }

    @Test
    void whenItsTimeIsOverAndItsVolumeIsNotReachedWaterStillCountsAsDeclared() {
        runsAsDeclared(60, 10, 3);
        site.run(15);
        assertEquals(Verdict.PLANNED, site.finding("sump").verdict());
        assertEquals(45, topUp().enteredL(), 2 * topUp().enteredSeL() + 1);
    }

    @Test
    void endedBeforeItsVolumeItIsConfirmedLikeAnyOther() {
        runsAsDeclared(60, 10, 6);
        site.run(4);
        site.release(0);
        site.endTopUp();
        site.run(12);
        assertTrue(words().startsWith("Line shut: "), words());
        assertEquals(24, topUp().enteredL(), 2 * topUp().enteredSeL() + 1);
    }

    @Test
    void aLineThatRunsOnIsSaidToWithItsRateAndLitresAndWhenItIsShutAfterAll() {
        runsAsDeclared(60, 10, 6);
        site.run(10);
        site.endTopUp();
        site.release(2);
        double before = site.sumpL;
        assertTrue(site.until("sump", Verdict.LINE_NOT_SHUT, 8) < 8);
        site.run(15);
        FlowFinding f = site.finding("sump");
        assertEquals(Verdict.LINE_NOT_SHUT, f.verdict());
        assertEquals(2, f.rateLMin(), 0.4);
        assertTrue(StrictMath.abs(site.sumpL - before - f.volumeL()) <= 2 * f.volumeSeL() + 1, f.toString());
        assertTrue(words().startsWith("The line is not shut: "), words());
        double ran = site.sumpL - before;
        site.release(0);
        site.run(8);
        assertTrue(words().startsWith("Line shut after all; "), words());
        assertEquals(Verdict.QUIET, site.finding("sump").verdict());
        Moved moved = site.balance.lines().get(0).moved();
        assertEquals(null, moved, "what ran on is booked with the top-up");
        assertTrue(ran > 25, "ran " + ran);
    }

    @Test
    void aDribbleIsFoundOnceTheBalanceCanTellItFromNothing() {
        runsAsDeclared(60, 10, 6);
        site.run(10);
        site.endTopUp();
        site.release(0.6);
        assertTrue(site.until("sump", Verdict.LINE_NOT_SHUT, 15) < 15, words());
        site.run(5);
        assertEquals(0.6, site.finding("sump").rateLMin(), 0.25);
    }

    @Test
    void whereNothingComesItSaysSoAndHidesNoOtherWater() {
        site.topUp(60, 10);
        site.run(5);
        assertTrue(words().startsWith("Nothing comes: "), words());
        assertEquals(Verdict.QUIET, site.finding("sump").verdict());
        site.sumpFlowLMin = 5;
        assertTrue(site.until("sump", Verdict.UNPLANNED_INFLOW, 6) < 6, "the mains run in meanwhile");
        site.run(3);
        assertEquals("outside", site.finding("sump").source());
    }

    @Test
    void openedLateItGoesOnAsDeclared() {
        site.topUp(60, 10);
        site.run(6);
        assertTrue(words().startsWith("Nothing comes: "), words());
        site.release(6);
        site.run(4);
        assertEquals("", words());
        assertEquals(Verdict.PLANNED, site.finding("sump").verdict());
        site.run(6);
        site.release(0);
        site.endTopUp();
        site.run(12);
        assertTrue(words().startsWith("Line shut: "), words());
        assertEquals(60, topUp().enteredL(), 2 * topUp().enteredSeL() + 1);
    }

    @Test
    void stoppedByItselfAndNeverEndedItSaysSoAndHidesNoOtherWater() {
        runsAsDeclared(60, 10, 6);
        site.run(10);
        site.release(0);
        site.run(15);
        assertTrue(words().startsWith("It has stopped by itself: "), words());
        site.sumpFlowLMin = 5;
        assertTrue(site.until("sump", Verdict.UNPLANNED_INFLOW, 6) < 6, words());
        site.run(20);
        assertEquals(Verdict.UNPLANNED_INFLOW, site.finding("sump").verdict());
    }

    @Test
    void aReserveThatRunsEmptyBeforeTheVolumeIsSaid() {
        runsAsDeclared(100, 20, 5);
        site.run(8);
        site.release(0);
        site.run(15);
        assertTrue(words().startsWith("It has stopped before its volume: "), words());
    }

    @Test
    void withThePumpStoppedTheReserveTellsAllAlong() {
        site.balance.pump(site.now(), false);
        site.run(2);
        runsAsDeclared(60, 10, 6);
        for (int i = 0; i < 10; i++) {
            site.run(1);
            assertEquals(Verdict.PLANNED, site.finding("sump").verdict());
        }
        site.release(0);
        site.endTopUp();
        site.run(15);
        assertTrue(words().startsWith("Line shut: "), words());
        assertEquals(60, topUp().enteredL(), 2 * topUp().enteredSeL() + 1);
        site.balance.pump(site.now(), true);
        site.run(30);
        assertEquals(Verdict.QUIET, site.finding("sump").verdict());
    }

    @Test
    void fromWaterWithoutALevelTheVesselItselfTells() {
        site.topUpFrom("mains", 60, 10);
        site.sumpFlowLMin = 6;
        site.run(10);
        assertEquals(Verdict.PLANNED, site.finding("sump").verdict());
        assertEquals("mains", site.finding("sump").source());
        assertEquals(60, topUp().enteredL(), 2 * topUp().enteredSeL() + 1);
        site.sumpFlowLMin = 0;
        site.endTopUp();
        site.run(15);
        assertTrue(words().startsWith("Line shut: "), words());
        assertEquals(Verdict.QUIET, site.finding("sump").verdict());
    }

    @Test
    void fromWaterWithoutALevelALineThatRunsOnIsFoundToo() {
        site.topUpFrom("mains", 60, 10);
        site.sumpFlowLMin = 6;
        site.run(10);
        site.endTopUp();
        site.sumpFlowLMin = 2;
        assertTrue(site.until("sump", Verdict.LINE_NOT_SHUT, 12) < 12, words());
        site.run(5);
        assertEquals(2, site.finding("sump").rateLMin(), 0.6);
        assertNotNull(site.finding("sump").overflowAt());
    }

    @Test
    void fromWaterWithoutALevelThatDoesNotComeItSaysSo() {
        site.topUpFrom("mains", 60, 10);
        site.run(8);
        assertTrue(words().startsWith("Nothing comes: "), words());
        assertNotEquals(Verdict.PLANNED, site.finding("sump").verdict());
    }
}
