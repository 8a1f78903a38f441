package bywash.tui.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.samples.simulation.Action;
import java.util.List;
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
}
