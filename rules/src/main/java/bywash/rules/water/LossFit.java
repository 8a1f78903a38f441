package bywash.rules.water;

import java.util.List;

/**
 * The rate of loss of a vessel, fitted from the grower's own tests of one standing batch.
 *
 * <p>A straight line through the logarithm of the residual against time by least squares; its slope is minus the rate. The
 * range is the 95 % confidence range of that slope. It is never narrower than a reading error of 10 % allows, so that three
 * lucky readings do not pass for certainty; with two tests, which leave no scatter to judge by, the reading error alone sets it.
 *
 * <p>Source: N. R. Draper and H. Smith, 1998, Applied Regression Analysis, 3rd ed., ch. 1 (slope, its standard error and Student's
 * t). Valid for at least two tests at different times, each at or above 0.02 mg/L, below which a DPD kit cannot read.
 */
public final class LossFit {
    /** Least residual that a DPD kit can tell from none (mg/L). */
    public static final double LEAST_READING_MG_L = 0.02;

    /** Assumed standard error of one reading, as a share of it. */
    private static final double READING_ERROR = 0.10;

    private static final double NORMAL_975 = 1.959964;

    /** Student's t, two-sided 95 %, for 1 to 30 degrees of freedom. */
    private static final double[] STUDENT_975 = {
        12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.160, 2.145, 2.131, 2.120,
        2.110, 2.101, 2.093, 2.086, 2.080, 2.074, 2.069, 2.064, 2.060, 2.056, 2.052, 2.048, 2.045, 2.042
    };

    private LossFit() {}

    /**
     * One test of the residual.
     *
     * @param hours time of the test from any fixed start (h)
     * @param residualMgL residual read (mg/L, 0.02 to 20)
     */
    public record Test(double hours, double residualMgL) {
        /** Refuses readings that a kit cannot make. */
        public Test {
            Valid.within("hours", hours, -1e6, 1e6, "h");
            Valid.within("residualMgL", residualMgL, LEAST_READING_MG_L, 20, "mg/L");
        }
    }

    /**
     * Fits the rate.
     *
     * @param tests at least two tests at different times
     * @return the rate with its 95 % range, both ends held at zero or above
     * @throws IllegalArgumentException if there are fewer than two different times
     */
    public static LossRate fit(List<Test> tests) {
        if (tests.size() < 2) {
            throw new IllegalArgumentException("tests has " + tests.size() + " entries; a rate needs at least 2");
        }
        double meanT = tests.stream().mapToDouble(Test::hours).sum() / tests.size();
        double meanY = tests.stream().mapToDouble(LossFit::log).sum() / tests.size();
        double sxx = 0;
        double sxy = 0;
        for (Test test : tests) {
            double dt = test.hours() - meanT;
            sxx += dt * dt;
            sxy += dt * (log(test) - meanY);
        }
        if (!(sxx > 0)) {
            throw new IllegalArgumentException("tests are all at the same time; a rate needs at least 2 times");
        }
        double slope = sxy / sxx;
        double half = halfWidth(tests, meanT, meanY, slope) / StrictMath.sqrt(sxx);
        double likely = Math.max(0, -slope);
        return new LossRate(Math.max(0, -slope - half), likely, Math.max(likely, -slope + half));
    }

    /** Student's t for a two-sided 95 % range; beyond 30 degrees of freedom its first-order approach to the normal. */
    static double student975(int degreesOfFreedom) {
        return degreesOfFreedom <= STUDENT_975.length
                ? STUDENT_975[degreesOfFreedom - 1]
                : NORMAL_975 + 2.45 / degreesOfFreedom;
    }

    private static double halfWidth(List<Test> tests, double meanT, double meanY, double slope) {
        double floor = NORMAL_975 * READING_ERROR;
        int free = tests.size() - 2;
        if (free == 0) {
            return floor;
        }
        double squares = 0;
        for (Test test : tests) {
            double miss = log(test) - meanY - slope * (test.hours() - meanT);
            squares += miss * miss;
        }
        return Math.max(floor, student975(free) * StrictMath.sqrt(squares / free));
    }

    private static double log(Test test) {
        return StrictMath.log(test.residualMgL());
    }
}
