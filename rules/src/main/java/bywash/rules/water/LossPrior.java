package bywash.rules.water;

/**
 * What to assume of the loss of chlorine from standing water until the grower's own tests say better.
 *
 * <p>Wide on purpose. For still and aerated open vessels no citable measured rate is known; the ranges span what is reported
 * as one to five days, and hours to a day, to fall to a twentieth or so. The other two rest on sources:
 *
 * <p>Source, sunlit: L. H. Nowell and J. Hoigne, 1992, Photolysis of aqueous chlorine at sunlight and ultraviolet wavelengths,
 * Water Res. 26:593-598: 0.72 1/h for HOCl and 4.3 1/h for OCl- at the surface at clear summer noon; the low end stands for
 * cloud, depth and night. Source, chloramine: C. T. Jafvert and R. L. Valentine, 1992, Environ. Sci. Technol. 26:577-586, in clean
 * dark water 5e-5 to 1e-3 1/h; the high end leaves room for vessels that nitrify.
 */
public enum LossPrior {
    STILL("still", new LossRate(0.01, 0.04, 0.2), "no measured rate is published; wide assumption"),
    AERATED("aerated", new LossRate(0.04, 0.15, 0.6), "no measured rate is published; wide assumption"),
    SUNLIT("sunlit", new LossRate(0.05, 0.5, 4.3), "Nowell and Hoigne 1992, surface at clear noon as the high end"),
    CHLORAMINE("chloramine", new LossRate(0.00005, 0.0003, 0.01), "Jafvert and Valentine 1992, clean dark water");

    private final String word;
    private final LossRate rate;
    private final String basis;

    LossPrior(String word, LossRate rate, String basis) {
        this.word = word;
        this.rate = rate;
        this.basis = basis;
    }

    /** The plain word for the state of the water. */
    public String word() {
        return word;
    }

    /** The assumed rate with its range. */
    public LossRate rate() {
        return rate;
    }

    /** What the range rests on. */
    public String basis() {
        return basis;
    }
}
