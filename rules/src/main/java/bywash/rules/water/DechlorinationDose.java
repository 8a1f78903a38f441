package bywash.rules.water;

/**
 * What to weigh out to remove a residual from a volume, and what it does besides.
 *
 * <p>Dose = residual x volume x (mass per mass) x (1 + excess) / strength. With chloramine the chlorine goes and its ammonia stays:
 * one nitrogen a chlorine molecule.
 *
 * <p>Source: stoichiometry, see {@link Dechlorinator}. Accuracy: that of the residual test and of the label strength.
 *
 * @param massG product to weigh out at label strength (g)
 * @param pureG pure chemical without excess (g)
 * @param oxygenTakenMgL oxygen that the excess may take (mg/L)
 * @param alkalinityUsedMgL alkalinity used (mg/L as CaCO3)
 * @param ammoniaReleasedMgL ammonia set free where the residual is chloramine, else 0 (mg/L as N)
 */
public record DechlorinationDose(
        double massG, double pureG, double oxygenTakenMgL, double alkalinityUsedMgL, double ammoniaReleasedMgL) {

    /** Nitrogen released by one part of monochloramine (mg N per mg Cl2). */
    public static final double NITROGEN_PER_CL2 = AtomicWeight.N / AtomicWeight.CL2;

    /**
     * What is to be dechlorinated.
     *
     * @param volumeL volume of water (L, above 0, at most 1 000 000)
     * @param residualMgL total residual chlorine (mg/L as Cl2, 0 to 20)
     * @param chloramine whether the residual is chloramine
     */
    public record Water(double volumeL, double residualMgL, boolean chloramine) {
        /** Refuses volumes and residuals outside the range. */
        public Water {
            Valid.positive("volumeL", volumeL, 1_000_000, "L");
            Valid.within("residualMgL", residualMgL, 0, 20, "mg/L");
        }
    }

    /**
     * Works out the dose.
     *
     * @param water what is to be dechlorinated
     * @param agent the chemical
     * @param strengthPercent pure chemical in the product by weight, from the label (%, above 0, at most 100)
     * @param excessPercent margin over what the reaction needs (%, 0 to 100)
     */
    public static DechlorinationDose of(
            Water water, Dechlorinator agent, double strengthPercent, double excessPercent) {
        Valid.positive("strengthPercent", strengthPercent, 100, "%");
        Valid.within("excessPercent", excessPercent, 0, 100, "%");
        double neededMgL = water.residualMgL() * agent.mgPerMgCl2();
        double excessMgL = neededMgL * excessPercent / 100;
        double pureG = neededMgL * water.volumeL() / 1000;
        return new DechlorinationDose(
                pureG * (1 + excessPercent / 100) / (strengthPercent / 100),
                pureG,
                excessMgL * agent.oxygenPerMgExcess(),
                water.residualMgL() * agent.alkalinityPerMgCl2(),
                water.chloramine() ? water.residualMgL() * NITROGEN_PER_CL2 : 0);
    }
}
