package bywash.rules.detect;

/** Gathers values into the mean of each whole minute. */
final class MinuteMean {
    private long minute = Long.MIN_VALUE;
    private double sum;
    private int samples;

    void clear() {
        minute = Long.MIN_VALUE;
        sum = 0;
        samples = 0;
    }

    /** How many minutes a time (min) is on from the minute gathered so far; 0 within it, and where nothing was gathered. */
    long on(double tMin) {
        return samples == 0 ? 0 : wholeMinute(tMin) - minute;
    }

    /** Ends the minute gathered so far, which must not be empty, and returns its mean. */
    double take() {
        double mean = sum / samples;
        sum = 0;
        samples = 0;
        return mean;
    }

    /** A value of the minute that {@code tMin} lies in. */
    void add(double tMin, double value) {
        minute = wholeMinute(tMin);
        sum += value;
        samples++;
    }

    private static long wholeMinute(double tMin) {
        return (long) StrictMath.floor(tMin);
    }
}
