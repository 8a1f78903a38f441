package bywash.rules.water;

/** Atomic and formula weights (g/mol). Source: IUPAC, 2021, abridged standard atomic weights. */
final class AtomicWeight {
    static final double H = 1.008;
    static final double C = 12.011;
    static final double N = 14.007;
    static final double O = 15.999;
    static final double NA = 22.990;
    static final double P = 30.974;
    static final double S = 32.06;
    static final double CL = 35.45;
    static final double K = 39.098;
    static final double CA = 40.078;

    static final double CL2 = 2 * CL;
    static final double O2 = 2 * O;
    static final double CO2 = C + O2;
    static final double CACO3 = CA + C + 3 * O;
    /** Calcium carbonate per equivalent of alkalinity. */
    static final double CACO3_EQ = CACO3 / 2;

    private AtomicWeight() {}
}
