package bywash.rules.detect;

import bywash.rules.detect.Stretch.Bounds;
import java.util.ArrayList;
import java.util.List;

/**
 * The volumes of the last hours in half-minute means, in stretches: within a stretch the level is continuous, between two
 * of them (a siphon's drain, a gap) it may jump. A stretch is ended after 20 minutes, so that slow
 * wandering of a level does not count as one long slope. Minutes, litres.
 */
final class FlowHistory {
    private static final int MOST = 1024;
    private static final double BIN_MIN =
            0.5 - 1e-6; // times count from the first message, so equal steps differ in their last digits
    private static final double LONGEST_MIN = 20 - 1e-6;

    private final Overflow overflow;
    private final double[] sumT = new double[MOST];
    private final double[] sumV = new double[MOST];
    private final int[] samples = new int[MOST];
    private final int[] stretch = new int[MOST];
    private int first;
    private int count;
    private int stretches;
    private double binMin = Double.NaN;
    private double stretchMin = Double.NaN;

    /** @param overflow where the level tells nothing of what comes in */
    FlowHistory(Overflow overflow) {
        this.overflow = overflow;
    }

    /** A volume as of {@link #add}, unless it stands at the overflow, which ends its stretch; noise of one volume in L. */
    void addBelowBrim(double tMin, double volumeL, double noiseL) {
        if (overflow.at(volumeL, noiseL)) {
            overflow.stoodThere(tMin);
            restart();
        } else {
            add(tMin, volumeL);
        }
    }

    /** A volume while nothing but the known slope and perhaps a flow moves it. */
    void add(double tMin, double volumeL) {
        if (Double.isNaN(stretchMin) || tMin - stretchMin > LONGEST_MIN) {
            restart();
            stretchMin = tMin;
        }
        if (Double.isNaN(binMin) || tMin - binMin >= BIN_MIN) {
            next();
            binMin = tMin;
        }
        int at = index(count - 1);
        sumT[at] += tMin;
        sumV[at] += volumeL;
        samples[at]++;
    }

    private void next() {
        if (count == MOST) {
            first = (first + 1) % MOST;
            count--;
        }
        int at = index(count);
        sumT[at] = 0;
        sumV[at] = 0;
        samples[at] = 0;
        stretch[at] = stretches;
        count++;
    }

    /** The level may jump from here on. */
    void restart() {
        if (!Double.isNaN(binMin)) {
            stretches++;
        }
        binMin = Double.NaN;
        stretchMin = Double.NaN;
    }

    /** What was is of no use any more: the usual slope is another one from here on. */
    void clear() {
        restart();
        count = 0;
    }

    private int index(int i) {
        return (first + i) % MOST;
    }

    int size() {
        return count;
    }

    double tMin(int i) {
        return sumT[index(i)] / samples[index(i)];
    }

    double volumeL(int i) {
        return sumV[index(i)] / samples[index(i)];
    }

    int samples(int i) {
        return samples[index(i)];
    }

    /** Means of one stretch have the same number, later stretches a greater one. */
    private int stretch(int i) {
        return stretch[index(i)];
    }

    /** The first mean at or after a time; {@link #size()} where there is none. */
    int from(double tMin) {
        int low = 0;
        int high = count;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (tMin(middle) < tMin) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The stretches from a time on that tell a slope: of two means or more. */
    List<Bounds> stretches(double fromMin) {
        return stretches(fromMin, Double.POSITIVE_INFINITY);
    }

    /** The same up to another time. */
    List<Bounds> stretches(double fromMin, double toMin) {
        List<Bounds> found = new ArrayList<>();
        int i = from(fromMin);
        while (i < count && tMin(i) <= toMin) {
            int to = i + 1;
            while (to < count && stretch(to) == stretch(i) && tMin(to) <= toMin) {
                to++;
            }
            if (to - i > 1) {
                found.add(new Bounds(i, to, tMin(i), tMin(to - 1)));
            }
            i = to;
        }
        return found;
    }

    /** The slope between two times, each stretch with a level and a standing error of its own; noise of one sample in L. */
    Slope slope(double fromMin, double toMin, Stretch.Usual usual) {
        double weight = 0;
        double sum = 0;
        double minutes = 0;
        for (Bounds b : stretches(fromMin, toMin)) {
            Stretch s = Stretch.of(this, b, b.endMin(), b.endMin(), usual);
            weight += 1 / s.slopeVar();
            sum += s.slope() / s.slopeVar();
            minutes += b.endMin() - b.startMin();
        }
        return new Slope(weight > 0 ? sum / weight : 0, 1 / StrictMath.sqrt(weight), minutes);
    }
}
