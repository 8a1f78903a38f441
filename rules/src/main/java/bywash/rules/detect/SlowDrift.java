package bywash.rules.detect;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Finds slow flows under siphon swings, over several window lengths.
 *
 * <p>A Hann-weighted mean over at least two of the longest cycles takes the sawtooth of every bed out of the level (its
 * side lobes fall below -31 dB from two cycles on: F. J. Harris, 1978, On the use of windows for harmonic analysis with
 * the discrete Fourier transform, Proc. IEEE 66(1), table I); what is left shows a ramp. The mean now is set against the
 * mean over the three lengths before, and the usual spread of that difference is learned for each length. The site's own cycles
 * choose which length speaks first: the shortest whose spread is small against the flow.
 */
final class SlowDrift {
    private static final int[] LENGTHS = {20, 26, 32, 40, 60};

    /** Minutes that {@link #changeL} takes its means over. */
    static final int MEAN_OVER = 20;

    private static final int HOUR = 60;
    private static final int KEPT_MIN = 1440 + 2 * HOUR;
    /** A hole of so many minutes is filled and marked; after a longer one the means begin anew. */
    private static final int LONGEST_HOLE_MIN = 5;

    private static final int USUAL_AFTER = 15;
    private static final int USUAL_OVER = 120;
    private static final int LEAST_USUAL = 45;

    private final List<SlowWindow> windows;
    private final boolean siphons;
    private final double[] minutes = new double[KEPT_MIN];
    private final boolean[] unseen = new boolean[KEPT_MIN];
    private int count;
    private int seenInARow;
    private double usualL = Double.NaN;
    private final MinuteMean minute = new MinuteMean();

    SlowDrift(boolean siphons) {
        this.siphons = siphons;
        this.windows =
                java.util.Arrays.stream(LENGTHS).mapToObj(SlowWindow::new).toList();
    }

    /** Forgets the levels, keeps what is usual. */
    void clear() {
        count = 0;
        usualL = Double.NaN;
        minute.clear();
        windows.forEach(SlowWindow::clear);
    }

    /** One volume; {@code hold} keeps the learned spread. */
    void add(double tMin, double volumeL, boolean hold) {
        if (!siphons) {
            return;
        }
        long on = minute.on(tMin);
        if (on != 0) {
            push(minute.take(), StrictMath.max(1, on), hold);
        }
        minute.add(tMin, volumeL);
    }

    private void push(double mean, long times, boolean hold) {
        if (times > LONGEST_HOLE_MIN) {
            clear();
        }
        put(mean, false);
        if (times == 2) {
            put(mean, false);
        } else if (times > 2) {
            double fill = lastL();
            for (long k = 1; k < StrictMath.min(times, LONGEST_HOLE_MIN); k++) {
                put(fill, true);
            }
        }
        usualL = usual();
        for (SlowWindow window : windows) {
            window.look(minutes, seenInARow < window.spanMin() ? unseen : null, count, hold);
        }
    }

    private void put(double meanL, boolean hole) {
        minutes[count % minutes.length] = meanL;
        unseen[count % minutes.length] = hole;
        count++;
        seenInARow = hole ? 0 : StrictMath.min(minutes.length, seenInARow + 1);
    }

    /** What a hole is filled with: the swing of the siphons stood anywhere in it, so not the height that it began at. */
    private double lastL() {
        int over = StrictMath.min(count, MEAN_OVER);
        return sum(0, over) / over;
    }

    /** Rate that the loudest window in the given direction shows, L/min; NaN where none is ready. */
    double rateLMin(boolean in) {
        SlowWindow found = null;
        for (SlowWindow window : windows) {
            if (in == window.sign() > 0 && window.score() > (found == null ? 0 : found.score())) {
                found = window;
            }
        }
        return found == null ? Double.NaN : found.rateLMin();
    }

    /** Mean of the last {@value #MEAN_OVER} min less that of as many before {@code minutesBack}, L; NaN where it is not known. */
    double changeL(double minutesBack) {
        return changeL((int) minutesBack, MEAN_OVER);
    }

    /** The same of whole hours, which steadier means tell. */
    double changeOfHoursL(double minutesBack) {
        return changeL((int) minutesBack, HOUR);
    }

    private double changeL(int back, int over) {
        if (back + over > StrictMath.min(count, minutes.length) || back < over) {
            return Double.NaN;
        }
        return (sum(0, over) - sum(back, over)) / over;
    }

    private double sum(int back, int over) {
        double sum = 0;
        for (int i = back + 1; i <= back + over; i++) {
            sum += minutes[(count - i) % minutes.length];
        }
        return sum;
    }

    /** By how much the mean of an hour usually differs from those before it, L; one standard deviation. */
    double hourSdL() {
        return windows.get(windows.size() - 1).sdL();
    }

    /** Mean of the two hours before the last quarter of an hour, or of what is known of them, L; NaN for less than one. */
    double usualL() {
        return usualL;
    }

    private double usual() {
        int known = StrictMath.min(count, minutes.length);
        int most = StrictMath.min(known, USUAL_AFTER + USUAL_OVER);
        if (most - USUAL_AFTER < LEAST_USUAL) {
            return Double.NaN;
        }
        return sum(USUAL_AFTER, most - USUAL_AFTER) / (most - USUAL_AFTER);
    }

    /** The least flow that some window shows after so many minutes, L/min; NaN while none is ready. */
    double findsLMin(double sinceMin) {
        double least = Double.NaN;
        for (SlowWindow window : windows) {
            least = Reach.least(least, window.findsLMin(sinceMin));
        }
        return least;
    }

    /**
     * The window that shows a slow flow most clearly; null where none does.
     *
     * @param beside what else is known of the flow that a window shows, as a log likelihood ratio
     */
    @Nullable
    SlowWindow speaks(ToDoubleFunction<SlowWindow> beside) {
        SlowWindow found = null;
        for (SlowWindow window : windows) {
            if (window.shows(beside) && (found == null || window.score() > found.score())) {
                found = window;
            }
        }
        return found;
    }
}
