package bywash.rules.water;

/**
 * The residual in one well-mixed body of water that mains water runs into, in closed form.
 *
 * <p>Filling (nothing leaves): V = V0 + q t, C V = C0 V0 e^-kt + q Cin (1 - e^-kt) / k. Overflowing (V constant): C approaches
 * q Cin / (q + k V) at the rate q/V + k. Standing: C = C0 e^-kt.
 *
 * <p>Source: mass balance of a completely mixed reactor with first-order loss, e.g. S. C. Chapra, 1997, Surface Water-Quality
 * Modeling, lectures 3 and 4. Accuracy: exact for a mixed tank; EPANET 2.2 agrees within its time-step error. A real tank mixes in
 * minutes, and near the inlet the residual is higher.
 *
 * @param volumeL volume of water (L, above 0, at most 10 000 000)
 * @param residualMgL residual (mg/L, 0 to 20)
 */
public record MixedTank(double volumeL, double residualMgL) {

    /** Refuses values outside the range. */
    public MixedTank {
        Valid.positive("volumeL", volumeL, 1e7, "L");
        Valid.within("residualMgL", residualMgL, 0, 20, "mg/L");
    }

    /**
     * What runs in.
     *
     * @param flowLMin flow (L/min, 0 to 10 000)
     * @param residualMgL residual in it (mg/L, 0 to 20)
     */
    public record Inflow(double flowLMin, double residualMgL) {
        /** Refuses values outside the range. */
        public Inflow {
            Valid.within("flowLMin", flowLMin, 0, 10_000, "L/min");
            Valid.within("residualMgL", residualMgL, 0, 20, "mg/L");
        }
    }

    /** The tank after filling for a time (min, 0 to 1 000 000) at a loss rate (1/h, 0 to 1000), nothing leaving. */
    public MixedTank filling(Inflow inflow, double ratePerHour, double minutes) {
        double k = check(ratePerHour, minutes);
        double volume = volumeL + inflow.flowLMin() * minutes;
        double entered = inflow.flowLMin() * inflow.residualMgL() * grown(k, minutes);
        return new MixedTank(volume, (residualMgL * volumeL * StrictMath.exp(-k * minutes) + entered) / volume);
    }

    /** The tank after a time (min) with as much mixed water leaving as enters. */
    public MixedTank overflowing(Inflow inflow, double ratePerHour, double minutes) {
        double k = check(ratePerHour, minutes) + inflow.flowLMin() / volumeL;
        double entered = inflow.flowLMin() / volumeL * inflow.residualMgL() * grown(k, minutes);
        return new MixedTank(volumeL, residualMgL * StrictMath.exp(-k * minutes) + entered);
    }

    /** The tank after standing for a time (min), nothing entering or leaving. */
    public MixedTank standing(double ratePerHour, double minutes) {
        return new MixedTank(volumeL, residualMgL * StrictMath.exp(-check(ratePerHour, minutes) * minutes));
    }

    /** Mains water that brings the residual of this tank to a limit (mg/L) with no loss, L; infinite if the mains never can. */
    public double litresUntil(double limitMgL, double mainsMgL) {
        Valid.within("limitMgL", limitMgL, 0, 20, "mg/L");
        Valid.within("mainsMgL", mainsMgL, 0, 20, "mg/L");
        if (residualMgL >= limitMgL) {
            return 0;
        }
        return mainsMgL <= limitMgL
                ? Double.POSITIVE_INFINITY
                : volumeL * (limitMgL - residualMgL) / (mainsMgL - limitMgL);
    }

    /** (1 - e^-kt) / k, which is t where k is 0 (min). */
    private static double grown(double perMinute, double minutes) {
        return perMinute == 0 ? minutes : -StrictMath.expm1(-perMinute * minutes) / perMinute;
    }

    private static double check(double ratePerHour, double minutes) {
        Valid.within("minutes", minutes, 0, 1e6, "min");
        return Valid.within("ratePerHour", ratePerHour, 0, 1000, "1/h") / 60;
    }
}
