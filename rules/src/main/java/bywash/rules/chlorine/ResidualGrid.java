package bywash.rules.chlorine;

import java.util.Arrays;

/**
 * Weights of residuals on a grid that is even in the logarithm: the weight of a cell lies evenly over it, for chances and quantiles
 * alike, so that what is said of the range and of the chance is said of one distribution. What is below the grid stands at zero.
 * Places on it are in cells from its lower end.
 */
final class ResidualGrid {
    static final int CELLS = 72;
    static final double FIRST_UG_L = 0.05;
    private static final double LAST_UG_L = 10_000;
    private static final double STEP = StrictMath.log(LAST_UG_L / FIRST_UG_L) / (CELLS - 1);
    private static final double BELOW_GRID = StrictMath.log(FIRST_UG_L) - STEP / 2;
    private static final double[] VALUES = values();

    private final double[] cells = new double[CELLS + 1];

    private static double[] values() {
        double[] values = new double[CELLS + 1];
        for (int i = 1; i <= CELLS; i++) {
            values[i] = FIRST_UG_L * StrictMath.exp(STEP * (i - 1));
        }
        return values;
    }

    /** Middle of a cell, 1 to {@value #CELLS}, ug/L; it lies from place {@code cell - 1} to {@code cell}. */
    static double middleUgL(int cell) {
        return VALUES[cell];
    }

    /** Where a residual lies; -1 for none. */
    static double place(double ugL) {
        return ugL <= 0 ? -1 : (StrictMath.log(ugL) - BELOW_GRID) / STEP;
    }

    /** Takes all weight off. */
    void clear() {
        Arrays.fill(cells, 0);
    }

    /** Spreads a weight evenly over the residuals between two places. */
    void add(double from, double to, double weight) {
        double left = weight;
        double each = to > from ? weight / (to - from) : 0;
        for (int cell = (int) StrictMath.max(0, StrictMath.floor(from)); cell < CELLS && cell < to; cell++) {
            double part = each * (StrictMath.min(to, cell + 1) - StrictMath.max(from, cell));
            cells[cell + 1] += part;
            left -= part;
        }
        cells[from >= CELLS ? CELLS : 0] += StrictMath.max(0, left);
    }

    /** Share of the weight above a value, by {@link #sharesAbove}. */
    double above(double[] shares) {
        double sum = 0;
        double all = 0;
        for (int i = 0; i <= CELLS; i++) {
            sum += cells[i] * shares[i];
            all += cells[i];
        }
        return all > 0 ? sum / all : 0;
    }

    /** How much of each cell lies above a value, 0 to 1. */
    static double[] sharesAbove(double ugL) {
        double[] shares = new double[CELLS + 1];
        for (int i = 1; i <= CELLS; i++) {
            double share = StrictMath.log(VALUES[i] / ugL) / STEP + 0.5;
            shares[i] = StrictMath.max(0, StrictMath.min(1, share));
        }
        return shares;
    }

    /** The value below which this share of the weight lies, ug/L. */
    double quantile(double share) {
        double all = 0;
        for (double w : cells) {
            all += w;
        }
        double left = share * all - cells[0];
        if (left <= 0) {
            return 0;
        }
        for (int i = 1; i <= CELLS; i++) {
            if (cells[i] > 0 && left <= cells[i]) {
                return VALUES[i] * StrictMath.exp(STEP * (left / cells[i] - 0.5));
            }
            left -= cells[i];
        }
        return VALUES[CELLS];
    }
}
