package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.detect.FlowFinding.Verdict;
import org.junit.jupiter.api.Test;

class BalanceBookTest {
    private final SmallSite site = new SmallSite(true).run(400);

    private BalanceLine line(String subject) {
        return site.balance.lines().stream()
                .filter(l -> l.subject().equals(subject))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void calmHoursLeaveNothingUnexplainedBeyondTheError() {
        for (String subject : new String[] {"sump", "reserve", BalanceLine.SYSTEM}) {
            BalanceLine line = line(subject);
            assertTrue(line.seL() > 0.05 && line.seL() < 2, line.toString());
            assertTrue(StrictMath.abs(line.unexplainedL()) < 3 * line.seL() + 0.5, line.toString());
        }
        assertEquals(1000, line(BalanceLine.SYSTEM).litres(), 8);
    }

    @Test
    void aTrickleTooSlowForAnAlarmShowsAsLitresUnexplained() {
        site.sumpFlowLMin = 0.2;
        site.run(62);
        assertEquals(12, line("sump").unexplainedL(), 1.5);
        assertEquals(12, line(BalanceLine.SYSTEM).unexplainedL(), 2);
        assertTrue(
                line("sump").unexplainedL() > 5 * line("sump").seL(),
                line("sump").toString());
    }

    @Test
    void evaporationIsUsualAndNotUnexplained() {
        SmallSite dry = new SmallSite(true);
        dry.sumpFlowLMin = -1.2 / 60;
        dry.run(1000);
        BalanceLine line = dry.balance.lines().get(0);
        assertEquals(-1.2, line.usualL(), 0.4);
        assertTrue(StrictMath.abs(line.unexplainedL()) < 3 * line.seL() + 0.5, line.toString());
    }

    @Test
    void aTransferIsALossHereAndAGainThereAndNothingInAll() {
        site.release(3);
        site.run(10);
        site.release(0);
        site.run(15);
        double twoErrorsL = 6; // of what is found of 3 L/min in ten minutes, with noise of 1.5 mm
        assertEquals(30, line("sump").foundL(), twoErrorsL);
        assertEquals(-30, line("reserve").foundL(), twoErrorsL);
        for (String subject : new String[] {"sump", "reserve", BalanceLine.SYSTEM}) {
            assertEquals(
                    0, line(subject).unexplainedL(), twoErrorsL, line(subject).toString());
        }
        assertEquals(0, line(BalanceLine.SYSTEM).changeL(), 3);
    }

    @Test
    void whatAnAlarmTellsOfAndThePageSayTheSameLitresAllAlong() {
        site.sumpFlowLMin = 5;
        site.until("sump", Verdict.UNPLANNED_INFLOW, 10);
        for (int i = 0; i < 60; i++) {
            site.run(0.5);
            Moved moved = line("sump").moved();
            assertNotNull(moved);
            assertEquals(site.finding("sump").volumeL(), moved.litres(), 1e-9);
            assertEquals(site.finding("sump").since(), moved.since());
            assertEquals(
                    0,
                    line("sump").unexplainedL(),
                    3 + 2 * line("sump").seL(),
                    line("sump").toString());
        }
        double in = site.sumpL - 400;
        site.sumpFlowLMin = 0;
        site.until("sump", Verdict.QUIET, 10);
        for (int i = 0; i < 100; i++) {
            site.run(1);
            Moved moved = line("sump").moved();
            assertNotNull(moved);
            assertNotNull(moved.until());
            assertEquals(in, moved.litres(), 2 * moved.seL() + 1);
            assertEquals(0, line("sump").unexplainedL(), 8, line("sump").toString());
        }
        site.run(60);
        assertNull(line("sump").moved());
    }

    @Test
    void aTopUpInProgressLeavesNothingUnexplained() {
        site.topUp(120, 20);
        site.release(6);
        for (int i = 0; i < 40; i++) {
            site.run(0.5);
            assertEquals(0, line("sump").unexplainedL(), 6, line("sump").toString());
            assertEquals(0, line("reserve").unexplainedL(), 6, line("reserve").toString());
        }
        site.release(0);
        site.endTopUp();
        for (int i = 0; i < 90; i++) {
            site.run(1);
            assertEquals(0, line("sump").unexplainedL(), 6, line("sump").toString());
            assertNull(line("sump").moved(), "what was declared was not found");
        }
    }

    @Test
    void aDeclaredTopUpExplainsWhatItBrought() {
        site.topUp(60, 10);
        site.release(6);
        site.run(10);
        site.release(0);
        site.endTopUp();
        site.run(20);
        assertEquals(60, line("sump").declaredL(), 5);
        assertEquals(-60, line("reserve").declaredL(), 5);
        assertEquals(0, line("sump").unexplainedL(), 5);
    }

    @Test
    void whatItSaysCanBeFoundIsFoundWithinTheHalfHour() {
        double least = line("sump").findsLMin();
        assertTrue(least > 0.2 && least < 1, "least " + least);
        site.sumpFlowLMin = 1.2 * least;
        assertTrue(site.until("sump", Verdict.UNPLANNED_INFLOW, 30) <= 30);
    }

    @Test
    void beforeAnythingIsLearnedItSaysThatNothingCanBeTold() {
        SmallSite young = new SmallSite(true).run(2);
        assertEquals(Verdict.LEARNING, young.finding("sump").verdict());
        assertTrue(young.finding("sump").why().contains("no flow can be told"));
        assertTrue(Double.isNaN(young.balance.lines().get(0).findsLMin()));
        young.run(10);
        assertFalse(Double.isNaN(young.balance.lines().get(0).findsLMin()));
    }
}
