package bywash.tui.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Supplier;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * The naive rules that the detector is compared with are the textbook's: their run lengths by simulation against the
 * tables, within four standard errors of the simulated mean. Where a table comes from stands in its head.
 */
class RunLengthsTest {
    private static final int RUNS = 1500;

    /** Mean run length and its standard error. */
    private record Mean(double value, double error) {}

    private static Mean simulate(Supplier<DoubleUnaryOperator> chart, double limit, double shift) {
        SplittableRandom random = new SplittableRandom(StrictMath.round(1000 * (shift + limit)));
        double sum = 0;
        double squares = 0;
        for (int run = 0; run < RUNS; run++) {
            DoubleUnaryOperator statistic = chart.get();
            int length = 1;
            while (StrictMath.abs(statistic.applyAsDouble(shift + random.nextGaussian())) <= limit) {
                length++;
            }
            sum += length;
            squares += (double) length * length;
        }
        double mean = sum / RUNS;
        return new Mean(mean, StrictMath.sqrt((squares / RUNS - mean * mean) / RUNS));
    }

    private static void holds(double table, Mean mean) {
        assertEquals(table, mean.value(), 4 * mean.error() + 0.005, "standard error " + mean.error());
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/cusum_arl.csv", useHeadersInDisplayName = true)
    void aCusumsRunLengthsAreThoseOfTheTable(double k, double h, double shift, String sided, double arl) {
        if (!sided.equals("two") || h * k > 3) {
            return;
        }
        holds(arl, simulate(() -> new Cusum(k)::add, h, shift));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/ewma_arl.csv", useHeadersInDisplayName = true)
    void anAveragesRunLengthsAreThoseOfTheTable(double lambda, double limit, double shift, double arl) {
        holds(arl, simulate(() -> new Ewma(lambda)::add, limit, shift));
    }
}
