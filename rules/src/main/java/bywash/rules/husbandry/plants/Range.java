package bywash.rules.husbandry.plants;

/** A low and a high end of one quantity; the unit is that of what holds it. */
public record Range(double low, double high) {
    public static final Range NOTHING = new Range(0, 0);

    public Range {
        if (!(low <= high)) {
            throw new IllegalArgumentException("range: low " + low + " must not be above high " + high);
        }
    }

    public Range plus(Range more) {
        return new Range(low + more.low, high + more.high);
    }

    /** Both ends by a factor, 0 or more. */
    public Range times(double factor) {
        return new Range(low * factor, high * factor);
    }

    /** Half way between the ends. */
    public double middle() {
        return (low + high) / 2;
    }
}
