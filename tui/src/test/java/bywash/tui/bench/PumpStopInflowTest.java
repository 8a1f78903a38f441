package bywash.tui.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.samples.simulation.Action;
import bywash.samples.simulation.Chores;
import bywash.samples.simulation.ProbeModel;
import bywash.samples.simulation.SiteModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The pump stops: what drains back is no inflow, what comes in besides is one after all. */
class PumpStopInflowTest {
    private static final double STOP_MIN = 760.4;

    private static double found(BalanceSink sink, double mostMin) {
        for (double t = STOP_MIN; t < STOP_MIN + mostMin; t += 0.25) {
            sink.to(t, 1e18);
            FlowFinding f = Objects.requireNonNull(sink.finding("sump"));
            if (f.verdict() == Verdict.UNPLANNED_INFLOW) {
                return t - STOP_MIN;
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    @ParameterizedTest
    @CsvSource({
        "no siphons, 4, 51", "no siphons, 8, 52", "three beds, 4, 53",
        "three beds, 8, 54", "Larkfield, 4, 55", "Larkfield, 8, 56"
    })
    void anInflowThatBeginsAsThePumpStopsIsFoundOnceDrainingBackIsOver(String site, double rate, long seed) {
        List<Action> actions = List.of(
                new Action.PumpOff(STOP_MIN, STOP_MIN + 60),
                new Action.InflowIntoSump(STOP_MIN, STOP_MIN + 60, rate, 0.9));
        BalanceSink sink = new BalanceSink(VolumeBenchmark.site(site), actions, seed);
        double after = found(sink, 40);
        assertTrue(after <= 14, "after " + after);
        sink.to(STOP_MIN + after + 5, 1e18);
        FlowFinding f = Objects.requireNonNull(sink.finding("sump"));
        double in = rate * (after + 5);
        assertEquals(in, f.volumeL(), 2 * f.volumeSeL() + 2, f.why());
        assertEquals("outside", f.source(), f.why());
    }

    @ParameterizedTest
    @CsvSource({
        "no siphons, 61", "no siphons, 62", "three beds, 63", "three beds, 64", "three beds, 65",
        "three beds, 66", "Larkfield, 67", "Larkfield, 68", "Larkfield, 69", "Larkfield, 70"
    })
    void whatDrainsBackAloneIsNone(String site, long seed) {
        List<Action> actions = List.of(new Action.PumpOff(STOP_MIN, STOP_MIN + 50));
        BalanceSink sink = new BalanceSink(VolumeBenchmark.site(site), actions, seed);
        assertEquals(Double.POSITIVE_INFINITY, found(sink, 140));
    }

    /** Between two samples a minute apart noise alone may stand still: a slope so short says nothing of a pump. */
    @ParameterizedTest
    @CsvSource({
        "60, 2.5, 7",
        "60, 2.5, 8",
        "60, 2.5, 12",
        "60, 4, 4",
        "60, 4, 8",
        "60, 4, 9",
        "60, 8, 3",
        "60, 8, 6",
        "30, 4, 5",
        "10, 2.5, 5"
    })
    void whereNoProbeTellsOfThePumpAnInflowIsNotTakenForAStop(int everyS, double rate, long seed) {
        SiteModel site = Variants.PLAIN.withPumpProbe(false).withProbe(new ProbeModel(1.5, everyS, 0.1, 0, 0));
        List<Action> actions = List.of(new Action.InflowIntoSump(STOP_MIN, STOP_MIN + 30, rate, 0.9));
        BalanceSink sink = new BalanceSink(site, actions, seed);
        double after = found(sink, 30);
        assertTrue(after <= 20, "after " + after);
        sink.to(STOP_MIN + after + 5, 1e18);
        FlowFinding f = Objects.requireNonNull(sink.finding("sump"));
        assertEquals(rate * (after + 5), f.volumeL(), 2 * f.volumeSeL() + 2, f.why());
    }

    /** What slows down is the pump, however seldom the level is heard, and while it is not known that is asked. */
    @ParameterizedTest
    @CsvSource({"60, 1.5, 71", "60, 1.5, 72", "30, 1.5, 73", "10, 1.5, 74", "20, 6, 75", "20, 6, 76"})
    void whereNoProbeTellsOfThePumpAStopIsAskedAboutAndNoInflow(int everyS, double noiseMm, long seed) {
        SiteModel site = Variants.PLAIN.withPumpProbe(false).withProbe(new ProbeModel(noiseMm, everyS, 0.1, 0, 0));
        BalanceSink sink = new BalanceSink(site, List.of(new Action.PumpOff(STOP_MIN, STOP_MIN + 50)), seed);
        boolean asked = false;
        for (double t = STOP_MIN; t < STOP_MIN + 140; t += 0.25) {
            sink.to(t, 1e18);
            asked |= Objects.requireNonNull(sink.finding("sump")).why().contains("Does the pump run?");
        }
        assertEquals(List.of(), sink.cries);
        assertTrue(asked);
    }

    /** Slow siphons hold the level now and then as a pump that stands does. */
    @ParameterizedTest
    @CsvSource({"601", "602", "603"})
    void aStopThatNobodyTellsIsNoticedAndNothingElseIsTakenForOne(long seed) {
        SiteModel site = Variants.THREE.withPumpProbe(false);
        BalanceSink sink = new BalanceSink(site, Chores.quiet(site, 6), seed);
        List<Double> begins = new ArrayList<>();
        boolean standing = false;
        for (double t = 0; t < 6 * 1440; t++) {
            sink.to(t, 1e18);
            FlowFinding f = sink.finding("sump");
            boolean stands = f != null && f.verdict() == Verdict.DRAIN_DOWN;
            if (stands && !standing) {
                begins.add(t);
            }
            standing = stands;
        }
        assertEquals(2, begins.size(), begins.toString());
        for (int i = 0; i < 2; i++) {
            double late = begins.get(i) - (1 + 3 * i) * 1440 - 13 * 60;
            assertTrue(late > 0 && late < 10, "late " + late);
        }
    }
}
