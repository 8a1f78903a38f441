package bywash.rules.detect;

/**
 * How the volume of one vessel changed within the last hour, and how much of that is usual there. Means over some
 * minutes are compared, so that neither noise nor the swing of siphons counts; what such changes are in calm times is
 * learned, their mean as evaporation and their spread as the error. Litres, minutes.
 */
final class HourlyChange {
    /** Minutes between the two means. */
    static final int APART_MIN = 60;

    private static final int MEAN_WITH_SIPHONS_MIN = 20;
    private static final int MEAN_MIN = 3;
    private static final int LONGEST_HOLE_MIN = 5;
    /** Changes overlap: after so many minutes their spread is worth saying. */
    private static final int SPREAD_KNOWN_MIN = 180;

    private static final double ODD_SIGMAS = 3;
    private static final double SETTLE_MIN = 5;
    private static final double MEMORY_MIN = 2880;

    private final int meanMin;
    private final double[] minutes;
    private int count;
    private final MinuteMean minute = new MinuteMean();
    private double endMin;
    private double changeL = Double.NaN;
    private double usualL;
    private double varianceL2;
    private int calmMinutes;
    private boolean unsettled;
    private double disturbedMin = -1e9;

    HourlyChange(boolean siphons) {
        this.meanMin = siphons ? MEAN_WITH_SIPHONS_MIN : MEAN_MIN;
        this.minutes = new double[APART_MIN + meanMin];
    }

    /** One volume; what is usual is learned while {@code steady} and long undisturbed. */
    void add(double tMin, double volumeL, boolean steady) {
        disturbedMin = steady && !unsettled ? disturbedMin : tMin;
        unsettled = false;
        long on = minute.on(tMin);
        if (on != 0) {
            endMin = StrictMath.floor(tMin);
            push(minute.take(), on, tMin - disturbedMin > minutes.length + SETTLE_MIN);
        }
        minute.add(tMin, volumeL);
    }

    private void push(double meanL, long times, boolean calm) {
        if (times > LONGEST_HOLE_MIN) {
            count = 0;
            changeL = Double.NaN;
        }
        for (long k = 0; k < StrictMath.max(1, StrictMath.min(times, LONGEST_HOLE_MIN)); k++) {
            minutes[count % minutes.length] = meanL;
            count++;
        }
        if (count < minutes.length) {
            return;
        }
        changeL = mean(count - meanMin) - mean(count - minutes.length);
        if (calm) {
            learn();
        }
    }

    /** A pump stop, a top-up, a filling: the next hour tells nothing of what is usual. */
    void disturbed() {
        unsettled = true;
    }

    private double mean(int from) {
        double total = 0;
        for (int i = 0; i < meanMin; i++) {
            total += minutes[(from + i) % minutes.length];
        }
        return total / meanMin;
    }

    private void learn() {
        calmMinutes++;
        double gain = StrictMath.max(1 / MEMORY_MIN, 1.0 / calmMinutes);
        double most = calmMinutes > SPREAD_KNOWN_MIN ? ODD_SIGMAS * StrictMath.sqrt(varianceL2) : Double.MAX_VALUE;
        double miss = StrictMath.max(-most, StrictMath.min(most, changeL - usualL));
        usualL += gain * miss;
        varianceL2 += gain * (miss * miss - varianceL2);
    }

    /** Litres; NaN until an hour was seen. */
    double changeL() {
        return changeL;
    }

    /** What it is in calm hours, litres: evaporation. */
    double usualL() {
        return usualL;
    }

    /** Standard error of the change as a sign of water that moved, litres; NaN until learned. */
    double seL() {
        return calmMinutes >= SPREAD_KNOWN_MIN ? StrictMath.sqrt(varianceL2) : Double.NaN;
    }

    /**
     * How much of an amount that came at {@code tMin} the change shows, 0 to 1: the means lag, so that what
     * came within the last minutes shows in part only, and what came an hour ago fades out of it in the same way.
     */
    double share(double tMin) {
        return StrictMath.max(0, seen(endMin - tMin) - seen(endMin - APART_MIN - tMin));
    }

    private double seen(double minutesAgo) {
        return StrictMath.max(0, StrictMath.min(1, minutesAgo / meanMin));
    }
}
