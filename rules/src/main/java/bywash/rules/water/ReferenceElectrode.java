package bywash.rules.water;

/**
 * Silver chloride reference electrodes against the standard hydrogen electrode: Eh = reading + potential of the reference.
 *
 * <p>Source: saturated and 3.5 mol/L, USGS National Field Manual, chapter A6.5, table of half-cell potentials, from memory: to be
 * confirmed against the source; 3 and 4 mol/L, computed with the USGS program PHREEQC (pitzer data base), 2 to 5 mV below practice
 * because the liquid junction is left out. Range: 10-35 Cel. Accuracy: 8 mV between the two kinds of source.
 */
public enum ReferenceElectrode {
    SATURATED("saturated", 214, 209, 204, 199, 194, 189),
    KCL_4_MOLAR("4M", 208.4, 204.7, 200.8, 196.8, 192.7, 188.4),
    KCL_3_5_MOLAR("3.5M", 215, 212, 208, 205, 201, 197),
    KCL_3_MOLAR("3M", 217.2, 213.7, 210.1, 206.3, 202.4, 198.3);

    private final String word;
    private final LineTable table;

    ReferenceElectrode(String word, double... everyFiveCel) {
        this.word = word;
        this.table = new LineTable("temperatureC", "Cel", new double[] {10, 15, 20, 25, 30, 35}, everyFiveCel);
    }

    /** Filling solution: saturated, or its strength in mol/L. */
    public String word() {
        return word;
    }

    /** Potential against the standard hydrogen electrode at a temperature (Cel, 10 to 35), mV. */
    public double potentialMv(double temperatureC) {
        return table.at(temperatureC);
    }

    /** A reading (mV, -2000 to 2000) on the hydrogen scale, mV. */
    public double toHydrogenMv(double readingMv, double temperatureC) {
        return Valid.within("readingMv", readingMv, -2000, 2000, "mV") + potentialMv(temperatureC);
    }

    /** What this electrode reads (mV) where the potential on the hydrogen scale is known. */
    public double fromHydrogenMv(double hydrogenMv, double temperatureC) {
        return Valid.within("hydrogenMv", hydrogenMv, -2000, 2000, "mV") - potentialMv(temperatureC);
    }
}
