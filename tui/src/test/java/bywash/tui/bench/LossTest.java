package bywash.tui.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.samples.simulation.Action;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Water lost by a leak, a hose that siphons to the floor and a burst: found, counted, and when the sump runs dry. */
class LossTest {
    private static final double ONSET_MIN = 760.4;
    private static final double DRY_L = 2;
    /** It is said for the bottom of the siphons' swing, which may come a cycle later. */
    private static final double SWING_MIN = 12;

    private final double[] dryMin = {Double.NaN};

    private BalanceSink sink(String site, double rate, long seed) {
        List<Action> actions = List.of(new Action.LeakFromSump(ONSET_MIN, ONSET_MIN + 600, rate));
        return new BalanceSink(VolumeBenchmark.site(site), actions, seed);
    }

    @ParameterizedTest
    @CsvSource({
        "no siphons, 3, 41, 5", "no siphons, 5, 42, 4", "no siphons, 15, 43, 3",
        "three beds, 3, 44, 30", "three beds, 5, 45, 20", "three beds, 12, 46, 15",
        "Larkfield, 3, 47, 30", "Larkfield, 5, 48, 20", "Larkfield, 12, 49, 15"
    })
    void theTimeUntilTheSumpRunsDryIsSaidWithItsError(String site, double rate, long seed, double foundWithin) {
        BalanceSink sink = sink(site, rate, seed);
        double found = Double.NaN;
        FlowFinding said = null;
        double saidMin = Double.NaN;
        for (double t = ONSET_MIN; t < ONSET_MIN + 500 && Double.isNaN(dryMin[0]); t += 0.25) {
            sink.to(t, 1e18);
            FlowFinding f = Objects.requireNonNull(sink.finding("sump"));
            if (Double.isNaN(found) && f.verdict() == Verdict.UNPLANNED_LOSS) {
                found = t;
            }
            if (said == null && t > found + 4 && f.dryAt() != null) {
                said = f;
                saidMin = t;
            }
            dryMin[0] = sink.truth().sumpL() < DRY_L ? t : Double.NaN;
        }
        assertTrue(found - ONSET_MIN <= foundWithin, "found after " + (found - ONSET_MIN));
        assertNotNull(said, "not said");
        double told = Duration.between(BalanceSink.START, said.dryAt()).toSeconds() / 60.0 - saidMin;
        double truth = dryMin[0] - saidMin;
        double error = 2 * said.rateSeLMin() / StrictMath.abs(said.rateLMin());
        assertTrue(
                truth >= told / (1 + error) - 3 && (error > 0.9 || truth <= told / (1 - error) + SWING_MIN),
                "said " + told + " min, error of the rate " + error + ", dry after " + truth);
        double lost = rate * (saidMin - ONSET_MIN);
        assertEquals(lost, said.moved().likelyL(), 2.5 * said.volumeSeL(), said.why());
    }
}
