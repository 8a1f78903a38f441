package bywash.tui.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.samples.simulation.Action;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A reserve is filled while its outlet leaks into the sump: it fills more slowly, and that names the source. */
class ReserveLeakTest {
    private static final double FILL_L_MIN = 4;
    private static final double LEAK_L_MIN = 2.5;

    private static FlowFinding after(String site, List<Action> actions, long seed, double minutes) {
        BalanceSink sink = new BalanceSink(VolumeBenchmark.site(site), actions, seed).to(minutes, 1e18);
        FlowFinding finding = sink.finding("sump");
        assertNotNull(finding);
        assertEquals(Verdict.UNPLANNED_INFLOW, finding.verdict(), finding.why());
        return finding;
    }

    @ParameterizedTest
    @CsvSource({"no siphons, 31", "Larkfield, 32", "three beds, 33"})
    void aLeakThatBeginsWhileItFillsIsNamed(String site, long seed) {
        List<Action> actions =
                List.of(new Action.FillReserve(700, 780, FILL_L_MIN, 0.9), new Action.OpenLine(720, 780, LEAK_L_MIN));
        FlowFinding f = after(site, actions, seed, 760);
        assertEquals("reserve", f.source(), f.why());
        assertTrue(f.why().contains("less than before"), f.why());
        assertTrue(f.why().contains("likely comes from there") || f.why().contains("certainly comes"), f.why());
    }

    @ParameterizedTest
    @CsvSource({"no siphons, 34", "Larkfield, 35"})
    void aLeakFromTheStartIsHeldAgainstTheFillingBefore(String site, long seed) {
        List<Action> actions = List.of(
                new Action.FillReserve(620, 650, FILL_L_MIN, 0.9),
                new Action.FillReserve(720, 780, FILL_L_MIN, 0.9),
                new Action.OpenLine(720, 780, LEAK_L_MIN));
        FlowFinding f = after(site, actions, seed, 765);
        assertEquals("reserve", f.source(), f.why());
    }

    @ParameterizedTest
    @CsvSource({"no siphons, 36", "Larkfield, 37"})
    void mainsThatRunIntoTheSumpWhileTheReserveFillsAsBeforeComeFromOutside(String site, long seed) {
        List<Action> actions = List.of(
                new Action.FillReserve(700, 780, FILL_L_MIN, 0.9),
                new Action.InflowIntoSump(720, 780, 2 * LEAK_L_MIN, 0.9));
        FlowFinding f = after(site, actions, seed, 755);
        assertEquals("outside", f.source(), f.why());
    }

    /** A reserve's level tells that the line is shut before the sump's does: the water still came from there. */
    @ParameterizedTest
    @CsvSource({"no siphons, 2", "Larkfield, 1", "Larkfield, 2", "Larkfield, 4", "three beds, 3", "three beds, 5"})
    void theSourceHoldsUntilTheEndIsTold(String site, long seed) {
        List<Action> actions = List.of(new Action.OpenLine(720, 760, 4));
        BalanceSink sink = new BalanceSink(VolumeBenchmark.site(site), actions, seed);
        Set<String> sources = new LinkedHashSet<>();
        FlowFinding last = null;
        for (double t = 735; t < 800; t += 1 / 12.0) {
            FlowFinding f = sink.to(t, 1e18).finding("sump");
            if (f != null && f.verdict() == Verdict.UNPLANNED_INFLOW) {
                sources.add(f.source());
                last = f;
            }
        }
        assertEquals(Set.of("reserve"), sources);
        assertNotNull(last);
        assertNotNull(last.until(), "its end is told");
    }

    /** The reserve's line is shut while mains run in as before: what comes is not the reserve's. */
    @ParameterizedTest
    @CsvSource({"no siphons, 41", "Larkfield, 42", "three beds, 43"})
    void whatComesOnWithoutTheReserveIsNotHeldToBeItsWater(String site, long seed) {
        List<Action> actions = List.of(new Action.OpenLine(720, 750, 5), new Action.InflowIntoSump(750, 800, 5, 0.9));
        assertEquals("reserve", after(site, actions, seed, 748).source());
        FlowFinding f = after(site, actions, seed, 775);
        assertTrue(f.source().equals("unknown") || f.source().equals("outside"), f.why());
        assertTrue(f.why().contains("counts as mains water"), f.why());
        FlowFinding.Part part = f.part();
        assertNotNull(part, f.why());
        assertEquals("reserve", part.reserve());
        assertEquals(150, part.litres(), 2 * part.se() + 1);
        assertNotNull(part.until(), "its fall is over");
    }
}
