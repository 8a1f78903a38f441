package bywash.rules.water;

/**
 * pH of the primary standard buffers by temperature, read between rows of 5 Cel by straight lines.
 *
 * <p>Source: NIST standard reference buffers, as in DIN 19266, table of pH by temperature, from memory: to be confirmed against the
 * source; R. G. Bates and others, 1969, J. Res. NBS 73A, confirm borax 9.180 and carbonate 10.012 at 25 Cel. Range: 0-40 Cel.
 * Accuracy: 0.005 between rows. Bought buffers of pH 4.00, 7.00 and 10.01 are other mixtures: use the table on their label.
 */
public enum PhBuffer {
    PHTHALATE("phthalate", 4.010, 4.004, 4.000, 3.999, 4.001, 4.006, 4.012, 4.021, 4.031),
    PHOSPHATE("phosphate", 6.984, 6.951, 6.923, 6.900, 6.881, 6.865, 6.853, 6.844, 6.838),
    BORAX("borax", 9.464, 9.395, 9.332, 9.276, 9.225, 9.180, 9.139, 9.102, 9.068),
    CARBONATE("carbonate", 10.317, 10.245, 10.179, 10.118, 10.062, 10.012, 9.966, 9.926, 9.889);

    private final String word;
    private final LineTable table;

    PhBuffer(String word, double... everyFiveCel) {
        this.word = word;
        this.table =
                new LineTable("temperatureC", "Cel", new double[] {0, 5, 10, 15, 20, 25, 30, 35, 40}, everyFiveCel);
    }

    /** The plain name. */
    public String word() {
        return word;
    }

    /** pH of the buffer at a temperature (Cel, 0 to 40). */
    public double ph(double temperatureC) {
        return table.at(temperatureC);
    }
}
