package bywash.rules.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.detect.RecentVolumes.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

/** Where a drain turns into a fill, against least squares by Hipparchus and against levels whose turn is known. */
class BendTest {
    private static final double KNOWN = -18;
    private static final double NOISE = 1.5;

    private static List<Point> drain(double bend, double rise, double fall, long seed) {
        Random random = new Random(seed);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            double t = i / 6.0;
            double v = 300 + (t < bend ? rise : fall) * (t - bend) + NOISE * random.nextGaussian();
            points.add(new Point(t, v));
        }
        return points;
    }

    /** The same two lines, with one more row that draws the known slope to what is known. */
    private static double leastSquaresBend(List<Point> points) {
        double best = Double.NaN;
        double least = Double.POSITIVE_INFINITY;
        double last = points.get(points.size() - 1).tMin();
        int steps = 3 * (points.size() - 1);
        for (int k = 1; k < steps; k++) {
            double at = last * k / steps;
            double[][] x = new double[points.size() + 1][];
            double[] y = new double[points.size() + 1];
            for (int i = 0; i < points.size(); i++) {
                double t = points.get(i).tMin() - at;
                x[i] = new double[] {1, StrictMath.max(0, t), StrictMath.min(0, t)};
                y[i] = points.get(i).volumeL();
            }
            double weight = NOISE / 4;
            x[points.size()] = new double[] {0, weight, 0};
            y[points.size()] = weight * KNOWN;
            OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
            fit.setNoIntercept(true);
            fit.newSampleData(y, x);
            double misfit = fit.calculateResidualSumOfSquares();
            if (misfit < least) {
                least = misfit;
                best = at;
            }
        }
        return best;
    }

    @Test
    void theBendIsWhereLeastSquaresPutsIt() {
        for (int seed = 1; seed <= 40; seed++) {
            List<Point> points = drain(0.55 + 0.01 * seed, 22, KNOWN, seed);
            assertEquals(leastSquaresBend(points), Bend.timeMin(points, KNOWN, NOISE), 1e-9, "seed " + seed);
        }
    }

    @Test
    void aTurnIsFoundWithinATenthOfAMinuteEvenWithWaterComingIn() {
        for (double inflow : new double[] {0, 4}) {
            double sum = 0;
            double squares = 0;
            for (int seed = 1; seed <= 400; seed++) {
                double miss = Bend.timeMin(drain(0.9, 22, KNOWN + inflow, seed), KNOWN, NOISE) - 0.9;
                sum += miss / 400;
                squares += miss * miss / 400;
            }
            assertTrue(StrictMath.abs(sum) < 0.05, "bias " + sum);
            assertTrue(StrictMath.sqrt(squares) < 0.1, "error " + StrictMath.sqrt(squares));
        }
    }

    @Test
    void tooFewPointsTellNothing() {
        assertTrue(Double.isNaN(Bend.timeMin(drain(0.5, 22, KNOWN, 1).subList(0, 3), KNOWN, NOISE)));
    }
}
