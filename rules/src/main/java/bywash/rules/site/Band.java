package bywash.rules.site;

/** A band of good values; either end may be infinite. Unit as the quantity's. */
public record Band(double low, double high) {
    public Band {
        if (!(low < high)) {
            throw new IllegalArgumentException("band: low " + low + " must be below high " + high);
        }
    }

    /** Whether a value is inside, ends and all; NaN is in no band. */
    public boolean contains(double value) {
        return value >= low && value <= high;
    }
}
