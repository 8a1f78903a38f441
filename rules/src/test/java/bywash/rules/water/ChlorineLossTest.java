package bywash.rules.water;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.published.PublishedTable;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.special.Beta;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChlorineLossTest {

    @Test
    @DisplayName("half-life of 12 min at pH 8 in full sun (Nowell and Hoigne 1992) is the high end of the sunlit range")
    void sunlitRangeReachesThePublishedRate() {
        PublishedTable table = PublishedTable.read("chlorine_loss_published", 11);
        double hypochlorite = table.rows().get(1).number("k_per_h_high");
        assertEquals(hypochlorite, LossPrior.SUNLIT.rate().highPerHour(), 0.021);
        double hocl = HypochlorousAcid.share(8, 20);
        double mixed = hocl * table.rows().get(0).number("k_per_h_low") + (1 - hocl) * hypochlorite;
        table.rows().get(4).nearShare("k_per_h_low", mixed, 0.02);
    }

    @Test
    @DisplayName("the chloramine range holds every rate of the EPA model's runs")
    void chloramineRangeHoldsTheModel() {
        int checked = 0;
        for (PublishedTable.Row row :
                PublishedTable.read("chloramine_decay", 192).rows()) {
            if (row.has("k_eff_per_h") && row.number("time_h") >= 24) {
                double k = row.number("k_eff_per_h");
                LossRate prior = LossPrior.CHLORAMINE.rate();
                assertTrue(k >= prior.lowPerHour() * 0.99 && k <= prior.highPerHour(), row.toString());
                checked++;
            }
        }
        assertTrue(checked > 100, "rows with a rate: " + checked);
    }

    @Test
    @DisplayName("the still range holds the EPA treatment plant model's 0.030 1/h (plausibility)")
    void stillRangeHoldsTheBottleModel() {
        PublishedTable table = PublishedTable.read("chlorine_demand_model", 18);
        double k = Math.log(table.rows().get(2).number("free_chlorine_mgL")
                        / table.rows().get(12).number("free_chlorine_mgL"))
                / 23;
        assertEquals(0.030, k, 0.001);
        assertTrue(k > LossPrior.STILL.rate().lowPerHour()
                && k < LossPrior.STILL.rate().highPerHour());
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void exactTestsGiveTheirRateBack(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 100; i++) {
            double k = random.nextDouble(0.001, 0.1);
            List<LossFit.Test> tests = new ArrayList<>();
            int count = 2 + random.nextInt(6);
            for (int j = 0; j < count; j++) {
                double hours = j * 3.0;
                tests.add(new LossFit.Test(hours, FirstOrderLoss.after(2, k, hours)));
            }
            LossRate rate = LossFit.fit(tests);
            assertEquals(k, rate.likelyPerHour(), 1e-12);
            assertTrue(rate.lowPerHour() <= k && k <= rate.highPerHour());
        }
    }

    @Test
    @DisplayName("95 of 100 ranges hold the true rate where readings carry an error of 10 %")
    void rangeHoldsTheTruthAboutAsOftenAsItSays() {
        SplittableRandom random = new SplittableRandom(42);
        int held = 0;
        int runs = 2000;
        for (int i = 0; i < runs; i++) {
            List<LossFit.Test> tests = new ArrayList<>();
            for (int j = 0; j < 4; j++) {
                tests.add(new LossFit.Test(j * 6.0, Math.exp(-0.05 * j * 6 + 0.1 * random.nextGaussian())));
            }
            LossRate rate = LossFit.fit(tests);
            held += rate.lowPerHour() <= 0.05 && 0.05 <= rate.highPerHour() ? 1 : 0;
        }
        assertTrue(held >= 0.94 * runs, held + " of " + runs);
    }

    @Test
    @DisplayName("Student's t equals Hipparchus's incomplete beta function")
    void studentEqualsHipparchus() {
        for (int free = 1; free <= 120; free++) {
            double t = LossFit.student975(free);
            double tail = Beta.regularizedBeta(free / (free + t * t), free / 2.0, 0.5);
            assertEquals(0.05, tail, 2e-4, "degrees of freedom " + free);
        }
    }

    @Test
    void waitIsARangeAndEndsAtTheLimit() {
        FirstOrderLoss.Wait wait = FirstOrderLoss.until(0.9, 0.019, LossPrior.STILL.rate());
        assertTrue(wait.earliestH() < wait.likelyH() && wait.likelyH() < wait.latestH());
        assertEquals(0.019, FirstOrderLoss.after(0.9, 0.04, wait.likelyH()), 1e-12);
        assertEquals(
                0, FirstOrderLoss.until(0.01, 0.019, LossPrior.STILL.rate()).latestH(), 0);
        LossRate none = new LossRate(0, 0, 0);
        assertEquals(0, FirstOrderLoss.until(0.01, 0.019, none).latestH(), 0, "though nothing is lost");
        assertEquals(0, FirstOrderLoss.until(0.019, 0.019, none).latestH(), 0, "at the limit to the point");
        assertEquals(
                Double.POSITIVE_INFINITY,
                FirstOrderLoss.until(1, 0.1, new LossRate(0, 0.1, 0.2)).latestH(),
                0);
    }

    @Test
    void tooFewTestsAreRefused() {
        LossFit.Test one = new LossFit.Test(0, 1);
        assertEquals(
                "tests has 1 entries; a rate needs at least 2",
                assertThrows(IllegalArgumentException.class, () -> LossFit.fit(List.of(one)))
                        .getMessage());
        assertThrows(IllegalArgumentException.class, () -> LossFit.fit(List.of(one, one)));
        assertThrows(IllegalArgumentException.class, () -> new LossFit.Test(0, 0.01));
        assertThrows(IllegalArgumentException.class, () -> new LossRate(0.2, 0.1, 0.3));
    }
}
