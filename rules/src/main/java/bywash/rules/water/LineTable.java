package bywash.rules.water;

/** A small published table, read between its rows by straight lines. */
final class LineTable {
    private final String field;
    private final String unit;
    private final double[] x;
    private final double[] y;

    LineTable(String field, String unit, double[] x, double[] y) {
        this.field = field;
        this.unit = unit;
        this.x = x.clone();
        this.y = y.clone();
    }

    double at(double value) {
        Valid.within(field, value, x[0], x[x.length - 1], unit);
        int i = 1;
        while (i < x.length - 1 && x[i] < value) {
            i++;
        }
        return y[i - 1] + (y[i] - y[i - 1]) * (value - x[i - 1]) / (x[i] - x[i - 1]);
    }
}
