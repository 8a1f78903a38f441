package bywash.rules.site;

/** What a species asks of its water and its keeper, with the one unit of each. */
public enum Need {
    /** Temperature it lives through. */
    TEMPERATURE("temperature", "Cel"),
    /** Temperature it grows best at. */
    BEST_TEMPERATURE("best-temperature", "Cel"),
    /** Temperature it feeds at. */
    FEEDING_TEMPERATURE("feeding-temperature", "Cel"),
    PH("ph", ""),
    OXYGEN("oxygen", "mg/L"),
    /** Total ammonia nitrogen. */
    TOTAL_AMMONIA("total-ammonia", "mg/L"),
    /** Un-ionised ammonia, as N. */
    UNIONISED_AMMONIA("unionised-ammonia", "mg/L"),
    /** Nitrite, as the test kit of the source gives it. */
    NITRITE("nitrite", "mg/L"),
    NITRATE("nitrate", "mg/L"),
    /** Total residual chlorine. */
    CHLORINE("chlorine", "ug/L"),
    /** Crude protein in the feed. */
    PROTEIN("protein", "%"),
    /** Guide to how much fish a volume of tank carries. */
    DENSITY("density", "kg/m3");

    private final String word;
    private final String unit;

    Need(String word, String unit) {
        this.word = word;
        this.unit = unit;
    }

    /** The key in site files. */
    public String word() {
        return word;
    }

    public String unit() {
        return unit;
    }
}
