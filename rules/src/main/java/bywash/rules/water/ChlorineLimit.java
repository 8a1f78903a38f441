package bywash.rules.water;

/**
 * Published limits and effect levels for chlorine in water, as data: value, averaging period and source.
 *
 * <p>Values are total residual chlorine in ug/L as Cl2 unless the condition says otherwise. Drinking-water values protect
 * people; they are 10 to 450 times what fish tolerate.
 */
public enum ChlorineLimit {
    EPA_ACUTE(19, "aquatic life, acute: 1-hour average, not exceeded more than once in 3 years", Source.EPA, true),
    EPA_CHRONIC(11, "aquatic life, chronic: 4-day average, not exceeded more than once in 3 years", Source.EPA, false),
    DAPHNIA(28, "lowest freshwater acute value, Daphnia magna", Source.EPA, true),
    RAINBOW_TROUT(61, "rainbow trout, species mean acute value", Source.EPA, true),
    STICKLEBACK(710, "highest freshwater fish acute value, threespine stickleback", Source.EPA, true),
    CHANNEL_CATFISH(90, "channel catfish, half killed in 96 h", Source.ILLINOIS, true),
    BLUEGILL_LOW(180, "bluegill, half killed in 96 h, low end", Source.ILLINOIS, true),
    BLUEGILL_HIGH(330, "bluegill, half killed in 96 h, high end", Source.ILLINOIS, true),
    CCME(0.5, "aquatic life, long term, reactive chlorine species", "CCME", true),
    ANZG_99(0.4, "toxicant guideline, 99 % of species protected", Source.ANZG, true),
    ANZG_95(3, "toxicant guideline, 95 % of species protected", Source.ANZG, true),
    ANZG_90(6, "toxicant guideline, 90 % of species protected", Source.ANZG, true),
    ANZG_80(13, "toxicant guideline, 80 % of species protected", Source.ANZG, true),
    EU_FISH_WATERS(5, "salmonid and cyprinid waters, as HOCl at pH 6", "EU Directive 2006/44/EC", false),
    EIFAC(4, "tentative limit, as HOCl", "EIFAC (Alabaster and Lloyd)", false),
    EPA_DRINKING(4000, "drinking water, free chlorine, running annual average", Source.EPA_TAP, false),
    EPA_DRINKING_CHLORAMINE(4000, "drinking water, chloramine, running annual average", Source.EPA_TAP, false),
    WHO_DRINKING(5000, "drinking water, health", Source.WHO, false),
    WHO_LEAST(500, "drinking water, least residual after 30 min contact at pH below 8", Source.WHO, true),
    ADWG_HEALTH(5000, "drinking water, health", Source.ADWG, true),
    ADWG_ODOUR(600, "drinking water, odour threshold", Source.ADWG, true),
    ADWG_MONOCHLORAMINE(3000, "drinking water, monochloramine, health", Source.ADWG, true);

    private static final class Source {
        static final String EPA = "US EPA 440/5-84-030 (1984)";
        static final String ILLINOIS = "Illinois State Water Survey RI-85 (Roseboom and Richey 1977)";
        static final String ANZG = "ANZECC/ARMCANZ 2000, ANZG";
        static final String EPA_TAP = "US EPA primary drinking water regulations";
        static final String WHO = "WHO Guidelines for Drinking-water Quality";
        static final String ADWG = "Australian Drinking Water Guidelines";
    }

    private final double limitUgL;
    private final String condition;
    private final String source;
    private final Provenance provenance;

    ChlorineLimit(double limitUgL, String condition, String source, boolean found) {
        this.limitUgL = limitUgL;
        this.condition = condition;
        this.source = source;
        this.provenance = found ? Provenance.FOUND : Provenance.FROM_MEMORY;
    }

    /** The limit (ug/L). */
    public double limitUgL() {
        return limitUgL;
    }

    /** What it applies to, and over what time it is averaged. */
    public String condition() {
        return condition;
    }

    /** Who published it. */
    public String source() {
        return source;
    }

    /** How the figure came into the project. */
    public Provenance provenance() {
        return provenance;
    }
}
