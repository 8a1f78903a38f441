package bywash.samples.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class LevelProbeTest {
    private static final SiteModel STILL =
            SiteModel.larkfield().withBeds(new BedModel(0, 12, 0, 0, false)).withEvaporation(0);

    private static Heard told(ProbeModel probe, double minutes, Action... actions) {
        Heard heard = new Heard();
        Heard.run(STILL.withProbe(probe), List.of(actions), 7, heard, minutes);
        return heard;
    }

    @Test
    void noiseHasTheStatedSpread() {
        LevelProbe probe = new LevelProbe(new ProbeModel(1.5, 10, 0.001, 0, 0), 0, new SplittableRandom(1));
        double sum = 0;
        double squares = 0;
        int n = 20_000;
        for (int i = 0; i < n; i++) {
            double miss = probe.read(300, i, false) - 300;
            sum += miss;
            squares += miss * miss;
        }
        assertEquals(0, sum / n, 4 * 1.5 / StrictMath.sqrt(n));
        assertEquals(1.5, StrictMath.sqrt(squares / n), 0.04);
    }

    @Test
    void aCoarseProbeTellsWholeStepsOnly() {
        told(new ProbeModel(1.5, 10, 5, 0, 0), 30).sumpMm.forEach(mm -> assertEquals(0, mm % 5));
    }

    @Test
    void driftMovesTheReadingByWhatItSays() {
        List<Double> mm = told(new ProbeModel(0, 10, 0.01, 12, 0), 1440).sumpMm;
        assertEquals(12, mm.get(mm.size() - 1) - mm.get(0), 0.1);
    }

    @Test
    void mishapsLoseSomeSendSomeTwiceAndSpikeSome() {
        Heard heard = told(new ProbeModel(0, 10, 0.1, 0, 0.05), 1440);
        long twice = 0;
        for (int i = 1; i < heard.sumpAt.size(); i++) {
            twice += heard.sumpAt.get(i).equals(heard.sumpAt.get(i - 1)) ? 1 : 0;
        }
        double usual = heard.sumpMm.get(heard.sumpMm.size() / 2);
        long spikes = heard.sumpMm.stream().filter(mm -> mm > usual + 5).count();
        assertTrue(twice > 300 && twice < 570, "twice " + twice);
        assertTrue(spikes > 300 && spikes < 570, "spikes " + spikes);
    }

    @Test
    void aSilentProbeSendsNothing() {
        Heard heard = told(new ProbeModel(1, 10, 0.1, 0, 0), 60, new Action.LevelSilent(20, 40));
        long inside = heard.sumpAt.stream()
                .map(at -> Duration.between(Heard.START, at).toSeconds() / 60.0)
                .filter(min -> min >= 20 && min < 40)
                .count();
        assertEquals(0, inside);
        assertEquals(240, heard.sumpMm.size());
    }

    @Test
    void aStuckProbeRepeatsOneValue() {
        List<Double> mm = told(new ProbeModel(1, 10, 0.1, 0, 0), 60, new Action.LevelStuck(20, 40)).sumpMm;
        assertEquals(1, mm.subList(125, 235).stream().distinct().count());
        assertTrue(mm.subList(0, 110).stream().distinct().count() > 20);
    }
}
