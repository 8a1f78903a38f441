package bywash.rules.water;

/**
 * Ammonia from feed, and what nitrifying it takes from the water.
 *
 * <p>Total ammonia nitrogen = feed x protein share x 0.092 (nitrogen in protein 0.16, assimilated 0.80, excreted 0.80, as ammonia
 * 0.90). Nitrifying one gram of nitrogen takes 4.57 g of oxygen and 7.14 g of alkalinity as CaCO3, growth of the bacteria left out.
 *
 * <p>Source: M. B. Timmons and J. M. Ebeling, Recirculating Aquaculture (factor 0.092), from memory: to be confirmed against the
 * source; stoichiometry of NH4+ + 2 O2 = NO3- + H2O + 2 H+. Range: feed 0-1000 kg/d, protein 10-70 %. Accuracy: the factor
 * varies by a fifth with species, feed and temperature; the stoichiometry is exact to 0.1 %.
 */
public final class Nitrification {
    /** Ammonia nitrogen per mass of feed protein. */
    public static final double TAN_PER_PROTEIN = 0.092;

    /** Protein of a feed whose label nobody entered, as a share: grow-out feeds have 0.30 to 0.40. Common practice, no source. */
    public static final double USUAL_PROTEIN = 0.35;

    /** Oxygen per nitrogen nitrified (g/g). */
    public static final double OXYGEN_PER_N = 2 * AtomicWeight.O2 / AtomicWeight.N;

    /** Alkalinity per nitrogen nitrified (g CaCO3/g). */
    public static final double ALKALINITY_PER_N = AtomicWeight.CACO3 / AtomicWeight.N;

    /** Nitrate per nitrate nitrogen (g NO3/g N). */
    public static final double NO3_PER_N = (AtomicWeight.N + 3 * AtomicWeight.O) / AtomicWeight.N;

    private Nitrification() {}

    /**
     * Ammonia nitrogen from feed.
     *
     * @param feedGPerDay feed (g/d, 0 to 1 000 000)
     * @param proteinPercent crude protein on the label (%, 10 to 70)
     * @return total ammonia nitrogen (g/d)
     */
    public static double tanGPerDay(double feedGPerDay, double proteinPercent) {
        Valid.within("feedGPerDay", feedGPerDay, 0, 1_000_000, "g/d");
        Valid.within("proteinPercent", proteinPercent, 10, 70, "%");
        return feedGPerDay * proteinPercent / 100 * TAN_PER_PROTEIN;
    }

    /** Oxygen (g/d) that nitrifying an amount of ammonia nitrogen (g/d, 0 to 100 000) takes. */
    public static double oxygenGPerDay(double tanGPerDay) {
        return Valid.within("tanGPerDay", tanGPerDay, 0, 100_000, "g/d") * OXYGEN_PER_N;
    }

    /** Alkalinity (g/d as CaCO3) that nitrifying an amount of ammonia nitrogen (g/d, 0 to 100 000) takes. */
    public static double alkalinityGPerDay(double tanGPerDay) {
        return Valid.within("tanGPerDay", tanGPerDay, 0, 100_000, "g/d") * ALKALINITY_PER_N;
    }
}
