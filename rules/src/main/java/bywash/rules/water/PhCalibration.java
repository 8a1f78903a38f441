package bywash.rules.water;

import java.util.List;

/**
 * A pH electrode's calibration in two or three buffers: a straight line by least squares through potential against pH.
 *
 * <p>Source: IUPAC recommendations 2002, Measurement of pH, R. P. Buck et al., Pure Appl. Chem. 74:2169-2200, section 8.2 (two-point and
 * multi-point calibration, practical slope against the Nernst slope). The bounds of the verdict (slope 95-102 % good, 90-105 %
 * usable; offset 15 and 30 mV; miss from the line 3 mV) are common bench practice, from memory: to be confirmed against the source.
 *
 * @param slopeMv slope (mV per pH, above zero for a working electrode)
 * @param slopePercent slope against the ideal (%)
 * @param offsetMv potential at pH 7 (mV)
 * @param largestMissMv largest distance of a point from the line (mV; 0 with two points)
 */
public record PhCalibration(double slopeMv, double slopePercent, double offsetMv, double largestMissMv) {

    /** What to do with the electrode. */
    public enum Verdict {
        GOOD("good"),
        USABLE("usable: clean it and calibrate again soon"),
        FAULTY("faulty: clean it, check the buffers, calibrate again, and replace it if it stays so");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        /** The verdict in plain words. */
        public String words() {
            return words;
        }
    }

    /**
     * One buffer.
     *
     * @param bufferPh pH of the buffer at its temperature (0 to 14)
     * @param readingMv electrode's potential in it (mV, -1000 to 1000)
     */
    public record Point(double bufferPh, double readingMv) {
        /** Refuses values outside the range. */
        public Point {
            Valid.within("bufferPh", bufferPh, 0, 14, "");
            Valid.within("readingMv", readingMv, -1000, 1000, "mV");
        }
    }

    /**
     * Calibrates.
     *
     * @param points two or three buffers, at least 1 pH apart from end to end
     * @param temperatureC temperature of the buffers (Cel, 0 to 60)
     */
    public static PhCalibration of(List<Point> points, double temperatureC) {
        Valid.within("number of points", points.size(), 2, 3, "");
        double low = points.stream().mapToDouble(Point::bufferPh).min().orElseThrow();
        double high = points.stream().mapToDouble(Point::bufferPh).max().orElseThrow();
        Valid.within("span of the buffers", high - low, 1, 14, "pH");
        double meanPh = points.stream().mapToDouble(Point::bufferPh).average().orElseThrow();
        double meanMv = points.stream().mapToDouble(Point::readingMv).average().orElseThrow();
        double sxx = 0;
        double sxy = 0;
        for (Point p : points) {
            sxx += (p.bufferPh() - meanPh) * (p.bufferPh() - meanPh);
            sxy += (p.bufferPh() - meanPh) * (p.readingMv() - meanMv);
        }
        double slope = -sxy / sxx;
        double offset = meanMv + slope * (meanPh - 7);
        double miss = 0;
        for (Point p : points) {
            miss = Math.max(miss, Math.abs(p.readingMv() - offset + slope * (p.bufferPh() - 7)));
        }
        double percent = 100 * slope / PhElectrode.idealSlopeMv(temperatureC);
        return new PhCalibration(slope, percent, offset, points.size() == 2 ? 0 : miss);
    }

    /** What to make of it. */
    public Verdict verdict() {
        if (slopePercent < 90 || slopePercent > 105 || Math.abs(offsetMv) > 30) {
            return Verdict.FAULTY;
        }
        boolean good = slopePercent >= 95 && slopePercent <= 102 && Math.abs(offsetMv) <= 15 && largestMissMv <= 3;
        return good ? Verdict.GOOD : Verdict.USABLE;
    }

    /** pH of a reading (mV, -1000 to 1000) taken at the temperature of the calibration. */
    public double ph(double readingMv) {
        if (!(slopeMv > 0)) {
            throw new IllegalArgumentException("slopeMv is " + slopeMv + "; it must be above 0 to read a pH");
        }
        return 7 - (Valid.within("readingMv", readingMv, -1000, 1000, "mV") - offsetMv) / slopeMv;
    }
}
