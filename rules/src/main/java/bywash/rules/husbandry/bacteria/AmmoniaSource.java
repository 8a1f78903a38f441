package bywash.rules.husbandry.bacteria;

import bywash.rules.water.Valid;

/**
 * What feeds the bacteria while there are no fish.
 *
 * <p>Nitrogen by mass: ammonium chloride NH4Cl 0.2619, ammonia NH3 0.8225 (IUPAC weights); pellets: protein x 0.16, all of which rots
 * to ammonia within about one to two weeks (the 0.16 from Timmons and Ebeling, read as quoted).
 */
public enum AmmoniaSource {
    AMMONIUM_CHLORIDE("ammonium-chloride", 14.007 / (14.007 + 4 * 1.008 + 35.45)),
    /** Household ammonia: a solution in water; the label gives its strength. */
    AMMONIA_SOLUTION("ammonia-solution", 14.007 / (14.007 + 3 * 1.008)),
    PELLETS("pellets", 0.16);

    private final String word;
    private final double nitrogenShare;

    AmmoniaSource(String word, double nitrogenShare) {
        this.word = word;
        this.nitrogenShare = nitrogenShare;
    }

    public String word() {
        return word;
    }

    /** Nitrogen per mass of the pure chemical, or of protein. */
    public double nitrogenShare() {
        return nitrogenShare;
    }

    /**
     * How much of it brings an amount of nitrogen.
     *
     * @param nitrogenG nitrogen (g, 0 to 100 000)
     * @param strengthPercent pure chemical in the product by weight, or protein in the pellets (%, above 0, at most 100)
     * @return product, g
     */
    public double productG(double nitrogenG, double strengthPercent) {
        Valid.within("nitrogenG", nitrogenG, 0, 100_000, "g");
        Valid.positive("strengthPercent", strengthPercent, 100, "%");
        return nitrogenG / nitrogenShare / (strengthPercent / 100);
    }

    /** The cautions that go with it. */
    public String cautions() {
        String dose = "Never with fish in the water. Follow the label; test before each dose.";
        return switch (this) {
            case AMMONIUM_CHLORIDE ->
                dose + " Gloves and eye protection; do not breathe the dust. Never mix chemicals.";
            case AMMONIA_SOLUTION ->
                dose + " Gloves, eye protection and fresh air: the vapour burns. Only ammonia and water, no perfume,"
                        + " colour or soap (shake: no foam). Never near bleach or any chlorine: they make a poisonous gas.";
            case PELLETS ->
                "Take out what moulds; rotting uses oxygen, keep the air on. Ammonia comes slowly, over days.";
        };
    }
}
