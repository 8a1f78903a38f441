package bywash.rules.site;

/** A probed quantity, with the one unit the rules use for it and the range outside which a value cannot be true. */
public enum Quantity {
    /** Depth of water above the vessel's floor, mm. */
    LEVEL("level", "mm", -50, 20_000),
    /** Water temperature, degrees Celsius (UCUM symbol Cel). */
    TEMPERATURE("temperature", "Cel", -5, 60),
    PH("ph", "pH", 0, 14),
    DISSOLVED_OXYGEN("dissolved-oxygen", "mg/L", 0, 30),
    /** Oxidation-reduction potential against the probe's own reference, mV. */
    ORP("orp", "mV", -1500, 1500),
    /** Conductivity at 25 Cel, uS/cm. */
    CONDUCTIVITY("conductivity", "uS/cm", 0, 100_000),
    FLOW("flow", "L/min", 0, 100_000),
    /** 1 = on or open, 0 = off or shut. */
    STATE("state", "", 0, 1);

    private final String word;
    private final String unit;
    private final double lowest;
    private final double highest;

    Quantity(String word, String unit, double lowest, double highest) {
        this.word = word;
        this.unit = unit;
        this.lowest = lowest;
        this.highest = highest;
    }

    /** The word used in site files and alarm lines. */
    public String word() {
        return word;
    }

    public String unit() {
        return unit;
    }

    /** Lowest value that can be true, in {@link #unit()}. */
    public double lowest() {
        return lowest;
    }

    /** Highest value that can be true, in {@link #unit()}. */
    public double highest() {
        return highest;
    }

    /** Whether a value is finite and physically possible. */
    public boolean possible(double value) {
        return value >= lowest && value <= highest;
    }
}
