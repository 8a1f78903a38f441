package bywash.rules.detect;

/**
 * How the volume of one vessel changed within the last hour, and how much of that is usual there. Means over some
 * minutes are compared, so that neither noise nor the swing of siphons counts; what such changes are in calm times is
 * learned, their mean as evaporation and their spread as the error. A minute that nobody heard is left out of its mean, which is
 * then less well known by as much as the minutes that were heard differ; where less than half of a mean was heard the change is
 * not known. Litres, minutes.
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
    private double unheardL;
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
            minutes[count % minutes.length] = k == 0 ? meanL : Double.NaN;
            count++;
        }
        if (count < minutes.length) {
            return;
        }
        Window now = window(count - meanMin);
        Window before = window(count - minutes.length);
        changeL = now.meanL - before.meanL;
        unheardL = StrictMath.hypot(now.unheardL, before.unheardL);
        if (calm && now.whole && before.whole) {
            learn();
        }
    }

    /** A pump stop, a top-up, a filling: the next hour tells nothing of what is usual. */
    void disturbed() {
        unsettled = true;
    }

    /**
     * A mean over some minutes.
     *
     * @param meanL of those that were heard; NaN where these are less than half
     * @param unheardL error by the others, one standard deviation
     */
    private record Window(double meanL, double unheardL, boolean whole) {}

    private Window window(int from) {
        int heard = 0;
        double total = 0;
        for (int i = 0; i < meanMin; i++) {
            double litres = minutes[(from + i) % minutes.length];
            heard += Double.isNaN(litres) ? 0 : 1;
            total += Double.isNaN(litres) ? 0 : litres;
        }
        if (2 * heard < meanMin) {
            return new Window(Double.NaN, Double.NaN, false);
        }
        double mean = total / heard;
        double squares = 0;
        for (int i = 0; i < meanMin; i++) {
            double miss = minutes[(from + i) % minutes.length] - mean;
            squares += Double.isNaN(miss) ? 0 : miss * miss;
        }
        // minutes that follow each other swing together: those unheard may all lie to one side
        double unheard = (meanMin - heard) / (double) meanMin * StrictMath.sqrt(squares / heard);
        return new Window(mean, unheard, heard == meanMin);
    }

    private void learn() {
        calmMinutes++;
        double gain = StrictMath.max(1 / MEMORY_MIN, 1.0 / calmMinutes);
        double most = calmMinutes > SPREAD_KNOWN_MIN ? ODD_SIGMAS * StrictMath.sqrt(varianceL2) : Double.MAX_VALUE;
        double miss = StrictMath.max(-most, StrictMath.min(most, changeL - usualL));
        usualL += gain * miss;
        varianceL2 += gain * (miss * miss - varianceL2);
    }

    /** Litres; NaN until an hour was seen, and while too little of it was heard. */
    double changeL() {
        return changeL;
    }

    /** What it is in calm hours, litres: evaporation. */
    double usualL() {
        return usualL;
    }

    /** Standard error of the change as a sign of water that moved, litres; NaN until learned. */
    double seL() {
        return calmMinutes >= SPREAD_KNOWN_MIN ? StrictMath.hypot(StrictMath.sqrt(varianceL2), unheardL) : Double.NaN;
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
