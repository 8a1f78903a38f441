package bywash.rules.chlorine;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Finds fillings of a reserve in its level: a rise of more than 6 L over the last low that then stops for 15 minutes.
 * The level counts as the median of five readings, so that single spikes are no filling.
 */
final class FillMeter {
    private static final double LEAST_RISE_L = 6;
    private static final double CREEP_L = 1.5;
    private static final Duration ENDS_AFTER = Duration.ofMinutes(15);
    private static final int MEDIAN_OF = 5;

    private final double[] last = new double[MEDIAN_OF];
    private int count;
    private double volumeL = Double.NaN;
    private double lowL = Double.NaN;
    private double peakL = Double.NaN;
    private Instant peakAt = Instant.EPOCH;
    private @Nullable Instant riseBegan;
    private boolean rising;

    /** One level of the reserve, as the volume its shape holds. */
    void level(Instant at, double litres) {
        last[count++ % MEDIAN_OF] = litres;
        if (count < MEDIAN_OF) {
            return;
        }
        if (count == 2 * MEDIAN_OF) {
            count = MEDIAN_OF;
        }
        double[] sorted = last.clone();
        Arrays.sort(sorted);
        volumeL = sorted[MEDIAN_OF / 2];
        if (Double.isNaN(lowL) || (!rising && volumeL < lowL)) {
            lowL = volumeL;
        }
        if (rising) {
            follow(at);
        } else if (volumeL - lowL > LEAST_RISE_L) {
            rising = true;
            riseBegan = at;
            peakL = volumeL;
            peakAt = at;
        }
    }

    private void follow(Instant at) {
        if (volumeL > peakL + CREEP_L) {
            peakL = volumeL;
            peakAt = at;
        } else if (Duration.between(peakAt, at).compareTo(ENDS_AFTER) > 0) {
            rising = false;
            lowL = volumeL;
        }
    }

    /** Water in the reserve, L; NaN before the first readings. */
    double volumeL() {
        return volumeL;
    }

    boolean rising() {
        return rising;
    }

    /** Volume before the latest filling, L; NaN where none was seen. */
    double beforeL() {
        return riseBegan == null ? Double.NaN : lowL;
    }

    /** Highest volume of the filling that runs, L. */
    double peakL() {
        return peakL;
    }

    /** When the latest filling was first seen; null where none was. */
    @Nullable
    Instant riseBegan() {
        return riseBegan;
    }

    ChlorineMemory.Meter memory() {
        return new ChlorineMemory.Meter(volumeL, lowL, peakL, peakAt, riseBegan, rising);
    }

    /** Goes on where another ended; the readings of its median come anew. */
    void restore(ChlorineMemory.Meter memory) {
        volumeL = memory.volumeL();
        lowL = memory.lowL();
        peakL = memory.peakL();
        peakAt = memory.peakAt();
        riseBegan = memory.riseBegan();
        rising = memory.rising();
    }
}
