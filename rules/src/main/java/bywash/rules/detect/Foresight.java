package bywash.rules.detect;

/**
 * Learns how far the slopes of half an hour lie from what was foretold of them an hour before, beyond noise: where the
 * pump's flow wanders from hour to hour, a learned slope is out by so much, and no number of samples averages that away.
 * L/min and minutes.
 */
final class Foresight {
    private static final double BLOCK_MIN = 30;
    /** A block whose own mean is known no better than so tells nothing. */
    private static final double LEAST_WEIGHT = 4;

    /** About a day of blocks is remembered. */
    private static final double GAIN = 1.0 / 48;

    private static final double FIRST_BLOCKS = 6;

    private double fromMin = Double.NaN;
    private double sumW;
    private double sumWm;
    private int blocks;
    private double varL2Min2;

    /** A phase that ended then missed its foretold slope by so much; its own standard error. */
    void missed(double atMin, double missLMin, double seLMin) {
        if (Double.isNaN(fromMin)) {
            fromMin = atMin;
        } else if (atMin - fromMin > BLOCK_MIN) {
            block();
            fromMin = atMin;
        }
        double w = 1 / (seLMin * seLMin);
        sumW += w;
        sumWm += w * missLMin;
    }

    private void block() {
        if (sumW >= LEAST_WEIGHT) {
            blocks++;
            double mean = sumWm / sumW;
            double beyond = StrictMath.max(0, mean * mean - 1 / sumW);
            varL2Min2 += StrictMath.max(GAIN, 1 / (FIRST_BLOCKS + blocks)) * (beyond - varL2Min2);
        }
        sumW = 0;
        sumWm = 0;
    }

    /** One standard deviation, L/min; 0 until it is known. */
    double sdLMin() {
        return StrictMath.sqrt(varL2Min2);
    }
}
