package bywash.rules.husbandry.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.published.PublishedTable;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.hipparchus.stat.regression.SimpleRegression;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GrowthTest {
    @Test
    @DisplayName("specific growth and thermal coefficient: worked example read in public, and Python 3.11")
    void ratesAgree() {
        List<PublishedTable.Row> rows = PublishedTable.read("growth", 3).rows();
        for (int i = 0; i < rows.size(); i++) {
            PublishedTable.Row row = rows.get(i);
            double days = row.number("days");
            Growth growth =
                    new Growth(row.number("from_g"), row.number("to_g"), days, days * row.number("temperature_C"));
            row.near("tgc", growth.thermalCoefficient(), i == 0 ? 0.005 : 1e-4);
            row.near("sgr_percent_d", growth.specificPercentPerDay(), 1e-4);
            double projected = Growth.projectedG(growth.fromG(), growth.thermalCoefficient(), growth.degreeDays());
            assertEquals(growth.toG(), projected, 1e-9 * growth.toG());
        }
    }

    @Test
    @DisplayName("specific growth is the slope of ln W over time (Hipparchus regression)")
    void specificGrowthIsTheSlopeOfTheLogarithm() {
        SimpleRegression regression = new SimpleRegression();
        for (int day = 0; day <= 60; day++) {
            regression.addData(day, Math.log(20 * Math.exp(0.018 * day)));
        }
        Growth growth = new Growth(20, 20 * Math.exp(0.018 * 60), 60, Double.NaN);
        assertEquals(100 * regression.getSlope(), growth.specificPercentPerDay(), 1e-9);
        assertTrue(Double.isNaN(growth.thermalCoefficient()), "no temperatures, no coefficient");
    }

    @Test
    @DisplayName(
            "at one temperature TGC follows from SGR (Marquez and others, 2024, Frontiers in Marine Science 11, their premise)")
    void theTwoRatesFollowFromEachOther() {
        Growth growth = new Growth(15, 60, 50, 50 * 20.0);
        double g = growth.specificPercentPerDay() / 100;
        double tgc = 1000 * Math.cbrt(15) * (Math.exp(g * 50 / 3) - 1) / (50 * 20.0);
        assertEquals(tgc, growth.thermalCoefficient(), 1e-9);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    @DisplayName("statistics of masses agree with Hipparchus")
    void statisticsAgree(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int n = 2; n < 60; n++) {
            DescriptiveStatistics oracle = new DescriptiveStatistics();
            List<Double> masses = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                double mass = random.nextDouble(50, 900);
                masses.add(mass);
                oracle.addValue(mass);
            }
            MassStatistics found = MassStatistics.of(masses);
            assertEquals(oracle.getN(), found.count());
            assertEquals(oracle.getSum(), found.totalG(), 1e-6);
            assertEquals(oracle.getMean(), found.meanG(), 1e-9);
            assertEquals(oracle.getStandardDeviation(), found.spreadG(), 1e-9);
            assertEquals(oracle.getMin(), found.smallestG(), 0);
            assertEquals(oracle.getMax(), found.largestG(), 0);
            assertEquals(oracle.getPercentile(50), found.medianG(), 1e-9);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {11, 12})
    @DisplayName(
            "the 95 % range of a sampled mean holds the true mean in 93 to 97.5 % of 4000 draws without return (Cochran 1977)")
    void theRangeOfASampleHoldsTheTruth(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Double> fish = new ArrayList<>();
        for (int i = 0; i < 80; i++) {
            fish.add(200 + 40 * random.nextGaussian());
        }
        double truth = MassStatistics.of(fish).meanG();
        int inside = 0;
        for (int run = 0; run < 4000; run++) {
            List<Double> pool = new ArrayList<>(fish);
            List<Double> sample = new ArrayList<>();
            for (int i = 0; i < 30; i++) {
                sample.add(pool.remove(random.nextInt(pool.size())));
            }
            double total = MassStatistics.of(sample).totalG();
            Weighing weighing = new Weighing(Instant.EPOCH, 30, 80, total, sample);
            if (Math.abs(weighing.meanG() - truth) <= weighing.halfWidthG()) {
                inside++;
            }
        }
        assertTrue(inside > 0.93 * 4000 && inside < 0.975 * 4000, "inside " + inside);
        assertEquals(0, new Weighing(Instant.EPOCH, 80, 80, 1, List.of()).halfWidthG(), 0);
    }

    @Test
    void impossibleMassesAreRefused() {
        assertEquals(
                "from is 0 g; it must be above 0 and at most 1000000 g",
                assertThrows(IllegalArgumentException.class, () -> new Growth(0, 1, 1, 1))
                        .getMessage());
        assertThrows(IllegalArgumentException.class, () -> MassStatistics.of(List.of()));
    }
}
