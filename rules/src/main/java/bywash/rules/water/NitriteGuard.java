package bywash.rules.water;

/**
 * Chloride that keeps nitrite out of the blood of fish: ten parts of chloride to one of nitrite, both in mg/L, nitrite as NO2.
 *
 * <p>Source: Southern Regional Aquaculture Center, 1997, publication 462, Nitrite in fish ponds (channel catfish; ratio 10:1, and
 * 100 mg/L of chloride as a standing precaution). Range: fresh water, nitrite 0-100 mg/L, chloride 0-5000 mg/L. Plants and many
 * species suffer from salt: treat the result as a ceiling to check against their limits.
 */
public final class NitriteGuard {
    /** Chloride to nitrite, mass to mass, nitrite as NO2. */
    public static final double CHLORIDE_TO_NITRITE = 10;

    private static final double NO2_PER_N = (AtomicWeight.N + AtomicWeight.O2) / AtomicWeight.N;
    private static final double SALT_PER_CHLORIDE = (AtomicWeight.NA + AtomicWeight.CL) / AtomicWeight.CL;

    private NitriteGuard() {}

    /** Nitrite as NO2 (mg/L) of nitrite nitrogen (mg/L as N, 0 to 30). */
    public static double asNo2MgL(double nitriteNitrogenMgL) {
        return Valid.within("nitriteNitrogenMgL", nitriteNitrogenMgL, 0, 30, "mg/L") * NO2_PER_N;
    }

    /** Chloride that protects against a nitrite (mg/L as NO2, 0 to 100), mg/L. */
    public static double chlorideNeededMgL(double nitriteMgL) {
        return CHLORIDE_TO_NITRITE * Valid.within("nitriteMgL", nitriteMgL, 0, 100, "mg/L");
    }

    /**
     * Pure sodium chloride that brings the chloride up to the protective level.
     *
     * @param nitriteMgL nitrite (mg/L as NO2, 0 to 100)
     * @param chlorideMgL chloride already there (mg/L, 0 to 5000)
     * @param volumeL volume of water (L, above 0, at most 1 000 000)
     * @return salt (g), 0 where there is chloride enough
     */
    public static double saltG(double nitriteMgL, double chlorideMgL, double volumeL) {
        Valid.within("chlorideMgL", chlorideMgL, 0, 5000, "mg/L");
        Valid.positive("volumeL", volumeL, 1_000_000, "L");
        double missing = Math.max(0, chlorideNeededMgL(nitriteMgL) - chlorideMgL);
        return missing * SALT_PER_CHLORIDE * volumeL / 1000;
    }
}
