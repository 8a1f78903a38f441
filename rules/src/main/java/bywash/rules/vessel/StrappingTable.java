package bywash.rules.vessel;

import java.util.List;

/**
 * A vessel of any shape, known by pairs of depth and volume that somebody measured while filling it.
 *
 * <p>Between the rows the volume follows a piecewise cubic that passes through every row, never overshoots, and has a
 * continuous slope, so the area of the surface neither jumps nor turns negative. The table starts at depth 0, volume 0;
 * depths rise and volumes rise.
 *
 * <p>Source: F. N. Fritsch and R. E. Carlson, 1980, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17:238-246
 * (the condition that slopes lie within three times the secants), with the interior slopes of F. N. Fritsch and J. Butland,
 * 1984, SIAM J. Sci. Stat. Comput. 5:300-304 (weighted harmonic mean of the neighbouring secants).
 *
 * <p>Accuracy: exact at the rows; between them no better than the spacing of the rows allows. A box with rows at any spacing
 * comes out exact.
 *
 * @param rows at least two rows, the first at depth 0 and volume 0
 */
public record StrappingTable(List<Row> rows) implements VesselShape {

    /**
     * One measured pair.
     *
     * @param depthMm depth (mm)
     * @param volumeL volume at that depth (L)
     */
    public record Row(double depthMm, double volumeL) {}

    /** Refuses tables that are too short, do not start at zero or do not rise. */
    public StrappingTable {
        rows = List.copyOf(rows);
        if (rows.size() < 2) {
            throw new IllegalArgumentException(
                    "rows has " + rows.size() + " entries; a strapping table needs at least 2");
        }
        Row first = rows.get(0);
        if (first.depthMm() != 0 || first.volumeL() != 0) {
            throw new IllegalArgumentException("rows starts at " + first + "; it must start at depth 0 and volume 0");
        }
        for (int i = 1; i < rows.size(); i++) {
            Row row = rows.get(i);
            Row before = rows.get(i - 1);
            Checks.size("rows[" + i + "].depthMm", row.depthMm());
            Checks.size("rows[" + i + "].volumeL", row.volumeL());
            if (row.depthMm() <= before.depthMm() || row.volumeL() <= before.volumeL()) {
                throw new IllegalArgumentException(
                        "rows[" + i + "] is " + row + "; depth and volume must both exceed " + before);
            }
        }
    }

    @Override
    public Kind kind() {
        return Kind.STRAPPING_TABLE;
    }

    @Override
    public double heightMm() {
        return last().depthMm();
    }

    @Override
    public double volumeL(double depthMm) {
        int i = segment(Checks.within("depthMm", depthMm, heightMm()));
        double width = width(i);
        double s = (depthMm - rows.get(i).depthMm()) / width;
        double v0 = rows.get(i).volumeL();
        double v1 = rows.get(i + 1).volumeL();
        if (s >= 1) {
            return v1;
        }
        double t = 1 - s;
        double value =
                v0 * (1 + 2 * s) * t * t + v1 * s * s * (3 - 2 * s) + width * s * t * (slope(i) * t - slope(i + 1) * s);
        return Math.max(v0, Math.min(v1, value));
    }

    @Override
    public double depthMm(double volumeL) {
        Checks.within("volumeL", volumeL, capacityL());
        return Checks.inverse(this::volumeL, volumeL, heightMm());
    }

    @Override
    public double areaM2(double depthMm) {
        int i = segment(Checks.within("depthMm", depthMm, heightMm()));
        double s = (depthMm - rows.get(i).depthMm()) / width(i);
        double t = 1 - s;
        double area = 6 * s * t * secant(i) + slope(i) * t * (1 - 3 * s) + slope(i + 1) * s * (3 * s - 2);
        return Math.max(0, area);
    }

    @Override
    public double capacityL() {
        return last().volumeL();
    }

    private Row last() {
        return rows.get(rows.size() - 1);
    }

    /** Index of the row at the lower end of the segment that holds a depth. */
    private int segment(double depthMm) {
        int low = 0;
        int high = rows.size() - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (rows.get(middle).depthMm() <= depthMm) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private double width(int i) {
        return rows.get(i + 1).depthMm() - rows.get(i).depthMm();
    }

    private double secant(int i) {
        return (rows.get(i + 1).volumeL() - rows.get(i).volumeL()) / width(i);
    }

    /** Slope of the curve at row i (L/mm). */
    private double slope(int i) {
        int top = rows.size() - 1;
        if (top == 1) {
            return secant(0);
        }
        if (i == 0) {
            return endSlope(width(0), width(1), secant(0), secant(1));
        }
        if (i == top) {
            return endSlope(width(top - 1), width(top - 2), secant(top - 1), secant(top - 2));
        }
        double w1 = 2 * width(i) + width(i - 1);
        double w2 = width(i) + 2 * width(i - 1);
        return (w1 + w2) / (w1 / secant(i - 1) + w2 / secant(i));
    }

    /** Three-point slope at an end, held within 0 and three times the end secant so that the curve stays monotone. */
    private static double endSlope(double near, double far, double nearSecant, double farSecant) {
        double raw = ((2 * near + far) * nearSecant - near * farSecant) / (near + far);
        return Math.max(0, Math.min(3 * nearSecant, raw));
    }
}
