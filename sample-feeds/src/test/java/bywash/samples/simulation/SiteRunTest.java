package bywash.samples.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry;
import bywash.samples.simulation.Action.FillReserve;
import bywash.samples.simulation.Action.InflowIntoSump;
import bywash.samples.simulation.Action.LeakFromSump;
import bywash.samples.simulation.Action.OpenLine;
import bywash.samples.simulation.Action.PumpOff;
import bywash.samples.simulation.Action.RainIntoSump;
import bywash.samples.simulation.Action.TopUp;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SiteRunTest {
    private static final SiteModel LARKFIELD = SiteModel.larkfield();

    private static Truth after(SiteModel model, double minutes, Action... actions) {
        return Heard.run(model, List.of(actions), 5, new Heard(), minutes).truth();
    }

    private static double heldL(Truth t) {
        return t.systemL() + t.reserveL();
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 3, 6})
    void noWaterIsMadeOrLost(int beds) {
        SiteModel model = LARKFIELD.withBeds(new BedModel(beds, 12, 0.1, 0.05, true));
        Action[] busy = {
            new InflowIntoSump(20, 80, 8, 0.9),
            new FillReserve(30, 200, 9, 0.9),
            new TopUp(100, 10, 6, 1, 130),
            new PumpOff(140, 170),
            new LeakFromSump(150, 220, 5),
            new OpenLine(160, 230, 3)
        };
        Truth first = after(model, 1.0 / 60, busy);
        Truth last = after(model, 240, busy);
        assertEquals(heldL(first) - first.netInL(), heldL(last) - last.netInL(), 1e-6);
    }

    @Test
    void theSumpSpillsAtItsOverflowAndHoldsThatMuch() {
        Truth t = after(LARKFIELD.withBeds(new BedModel(0, 12, 0, 0, false)), 120, new InflowIntoSump(0, 120, 8, 0));
        assertEquals(LARKFIELD.sumpFullL(), t.sumpL(), 0.2);
        assertTrue(t.spilledL() > 100, "spilled " + t.spilledL());
    }

    @Test
    void theReserveSpillsAtItsOverflow() {
        Truth t = after(LARKFIELD, 120, new FillReserve(0, 120, 9, 0.9));
        assertEquals(1100 * Reserve.AREA_M2, t.reserveL(), 0.01);
    }

    @Test
    void mainsWaterBringsItsChlorineAndRainBringsNone() {
        Truth mains = after(LARKFIELD, 30, new InflowIntoSump(10, 30, 5, 0.9));
        Truth rain = after(LARKFIELD, 30, new RainIntoSump(10, 30, 5));
        assertEquals(0, rain.residualUgL());
        assertTrue(mains.residualUgL() > 30, "residual " + mains.residualUgL());
    }

    @Test
    void theReserveGivesItsOwnResidualAlong() {
        Truth filled = after(LARKFIELD, 60, new FillReserve(0, 30, 9, 0.9));
        Truth given = after(LARKFIELD, 60, new FillReserve(0, 30, 9, 0.9), new OpenLine(40, 60, 6));
        assertTrue(filled.reserveResidualMgL() > 0.2);
        assertEquals(0, filled.residualUgL());
        double most = 120 * filled.reserveResidualMgL() * 1000 / given.systemL();
        assertTrue(given.residualUgL() > 0.8 * most && given.residualUgL() < 1.1 * most, "" + given.residualUgL());
    }

    @Test
    void pipesDrainBackAndFillAgain() {
        assertEquals(0, after(LARKFIELD, 30, new PumpOff(10, 60)).pipesL(), 0.1);
        assertEquals(45, after(LARKFIELD, 90, new PumpOff(10, 60)).pipesL(), 0.1);
    }

    @Test
    void theSameSeedTellsTheSameAndAnotherDoesNot() {
        Heard one = new Heard();
        Heard same = new Heard();
        Heard other = new Heard();
        Heard.run(LARKFIELD, List.of(), 3, one, 30);
        Heard.run(LARKFIELD, List.of(), 3, same, 30);
        Heard.run(LARKFIELD, List.of(), 4, other, 30);
        assertEquals(one.sumpMm, same.sumpMm);
        assertNotEquals(one.sumpMm, other.sumpMm);
    }

    @Test
    void quietWeeksHaveAReleaseADayAndOneBatchAWeek() {
        Heard heard = new Heard();
        SiteModel model = LARKFIELD.withProbe(new ProbeModel(1.5, 60, 0.1, 0, 0));
        Truth t = Heard.run(model, Chores.quiet(model, 8), 1, heard, 8 * 1440).truth();
        assertEquals(
                7,
                heard.entries.stream()
                        .filter(e -> e instanceof OperatorEntry.TopUpStart)
                        .count());
        assertEquals(
                7,
                heard.entries.stream()
                        .filter(e -> e instanceof OperatorEntry.TopUpEnd)
                        .count());
        assertEquals(
                1,
                heard.entries.stream()
                        .filter(e -> e instanceof OperatorEntry.BatchFill)
                        .count());
        assertEquals(0, t.spilledL());
    }
}
