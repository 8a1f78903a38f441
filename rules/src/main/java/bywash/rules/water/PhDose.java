package bywash.rules.water;

/**
 * How much of one acid or base moves a water from one pH to another.
 *
 * <p>Closed to air the inorganic carbon stays but for what the reagent brings: m = (charge(pH) DIC + OH - H - Alk) / (e - c charge(pH)).
 * Open to air the carbon dioxide stays at that of the air, so m = (Alk at the air's CO2 and the new pH - Alk) / e; that state is
 * reached only after hours to days of aeration.
 *
 * <p>Source: charge balance, as in {@link CarbonateWater}; checked against the USGS program PHREEQC (closed, within 6.3 % for acids and bases and 10.7 % for bicarbonate, the price of
 * taking activity coefficients as 1). Range: pH 4-11, 0-40 Cel.
 *
 * @param mmolL reagent (mmol/L of water)
 * @param after the water afterwards
 */
public record PhDose(double mmolL, CarbonateWater after) {

    /**
     * Dose with the water closed to air.
     *
     * @throws IllegalArgumentException if the reagent cannot take the water to that pH
     */
    public static PhDose closed(CarbonateWater before, PhReagent reagent, double targetPh) {
        Valid.within("targetPh", targetPh, 4, 11, "");
        double t = before.temperatureC();
        double charge = CarbonateWater.charge(t, targetPh);
        double wanted =
                charge * before.totalCarbonMmolL() + CarbonateWater.waterEq(t, targetPh) - before.alkalinityMeqL();
        double perMol = reagent.equivalentsPerMol(targetPh) - reagent.carbonPerMol() * charge;
        double mmolL = amount(wanted, perMol, before, reagent, targetPh);
        double carbon = before.totalCarbonMmolL() + mmolL * reagent.carbonPerMol();
        return new PhDose(mmolL, new CarbonateWater(t, targetPh, carbon));
    }

    /**
     * Dose with the water open to air and given time to come to rest with it.
     *
     * @param airPpm carbon dioxide in the air (ppm, 100 to 100 000)
     * @throws IllegalArgumentException if the reagent cannot take the water to that pH
     */
    public static PhDose open(CarbonateWater before, PhReagent reagent, double targetPh, double airPpm) {
        Valid.within("targetPh", targetPh, 4, 11, "");
        Valid.within("airPpm", airPpm, 100, 100_000, "ppm");
        double t = before.temperatureC();
        double co2 = StrictMath.pow(10, CarbonateConstants.logKh(t)) * airPpm * 1e-3;
        CarbonateWater after = new CarbonateWater(t, targetPh, co2 / CarbonateWater.co2Share(t, targetPh));
        double wanted = after.alkalinityMeqL() - before.alkalinityMeqL();
        double perMol = reagent.equivalentsPerMol(targetPh);
        return new PhDose(amount(wanted, perMol, before, reagent, targetPh), after);
    }

    /** Pure chemical for a volume (L, above 0, at most 1 000 000), g. */
    public double grams(PhReagent reagent, double volumeL) {
        Valid.positive("volumeL", volumeL, 1_000_000, "L");
        return mmolL * reagent.gramsPerMol() * volumeL / 1000;
    }

    private static double amount(
            double wanted, double perMol, CarbonateWater before, PhReagent reagent, double targetPh) {
        boolean works = reagent.isAcid() ? perMol < 0 : perMol > 0;
        double mmolL = wanted / perMol;
        if (!works || !(mmolL >= 0)) {
            throw new IllegalArgumentException("targetPh is " + targetPh + "; "
                    + reagent.word().replace('-', ' ') + " cannot take this water there from pH " + before.ph());
        }
        return mmolL;
    }
}
