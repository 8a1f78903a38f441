package bywash.rules.water;

/** Refuses values outside the range a formula was made for. */
public final class Valid {
    private Valid() {}

    /** Returns the value, or throws naming the field, the value and the valid range; NaN is outside every range. */
    public static double within(String field, double value, double low, double high, String unit) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(field + " is " + plain(value) + "; it must be from " + plain(low)
                    + " to " + plain(high) + unit(unit));
        }
        return value;
    }

    /** Returns the value if it is above zero and not above the top. */
    public static double positive(String field, double value, double high, String unit) {
        if (!(value > 0 && value <= high)) {
            throw new IllegalArgumentException(
                    field + " is " + plain(value) + "; it must be above 0 and at most " + plain(high) + unit(unit));
        }
        return value;
    }

    private static String unit(String unit) {
        return unit.isEmpty() ? "" : " " + unit;
    }

    private static String plain(double value) {
        boolean whole = value == Math.rint(value) && Math.abs(value) < 1e15;
        return whole ? Long.toString((long) value) : Double.toString(value);
    }
}
