package bywash.rules.water;

import static bywash.rules.water.AtomicWeight.C;
import static bywash.rules.water.AtomicWeight.CA;
import static bywash.rules.water.AtomicWeight.CACO3_EQ;
import static bywash.rules.water.AtomicWeight.CL;
import static bywash.rules.water.AtomicWeight.H;
import static bywash.rules.water.AtomicWeight.K;
import static bywash.rules.water.AtomicWeight.N;
import static bywash.rules.water.AtomicWeight.NA;
import static bywash.rules.water.AtomicWeight.O;
import static bywash.rules.water.AtomicWeight.P;
import static bywash.rules.water.AtomicWeight.S;

import java.util.Optional;
import java.util.stream.Stream;

/**
 * Acids and bases that move the pH of a system.
 *
 * <p>An acid takes from the alkalinity as many equivalents a mole as protons it has let go at the final pH; a base adds its
 * equivalents, and a carbonate adds inorganic carbon as well. Acid constants are at 25 Cel and used at all temperatures, which
 * moves a dose of phosphoric or citric acid by under 3 % between 10 and 35 Cel.
 *
 * <p>Source: CRC Handbook of Chemistry and Physics, dissociation constants of inorganic and organic acids (phosphoric 2.16, 7.21,
 * 12.32; sulfuric 1.99 for its second; citric 3.13, 4.76, 6.40), from memory: to be confirmed against the source; weights from IUPAC.
 */
public enum PhReagent {
    HYDROCHLORIC_ACID("hydrochloric-acid", H + CL, 0, 0, -20),
    NITRIC_ACID("nitric-acid", H + N + 3 * O, 0, 0, -20),
    PHOSPHORIC_ACID("phosphoric-acid", 3 * H + P + 4 * O, 0, 0, 2.16, 7.21, 12.32),
    SULFURIC_ACID("sulfuric-acid", 2 * H + S + 4 * O, 0, 0, -3, 1.99),
    CITRIC_ACID("citric-acid", 6 * C + 8 * H + 7 * O, 0, 0, 3.13, 4.76, 6.40),
    SODIUM_HYDROXIDE("sodium-hydroxide", NA + O + H, 1, 0),
    POTASSIUM_HYDROXIDE("potassium-hydroxide", K + O + H, 1, 0),
    CALCIUM_HYDROXIDE("calcium-hydroxide", CA + 2 * (O + H), 2, 0),
    POTASSIUM_CARBONATE("potassium-carbonate", 2 * K + C + 3 * O, 2, 1),
    CALCIUM_CARBONATE("calcium-carbonate", CA + C + 3 * O, 2, 1),
    POTASSIUM_BICARBONATE("potassium-bicarbonate", K + H + C + 3 * O, 1, 1),
    SODIUM_BICARBONATE("sodium-bicarbonate", NA + H + C + 3 * O, 1, 1);

    private final String word;
    private final double molarMass;
    private final double baseEq;
    private final double carbon;
    private final double[] pKas;

    PhReagent(String word, double molarMass, double baseEq, double carbon, double... pKas) {
        this.word = word;
        this.molarMass = molarMass;
        this.baseEq = baseEq;
        this.carbon = carbon;
        this.pKas = pKas;
    }

    /** The name on the label, with hyphens. */
    public String word() {
        return word;
    }

    /** The reagent of a word. */
    public static Optional<PhReagent> of(String word) {
        return Stream.of(values()).filter(r -> r.word.equals(word)).findFirst();
    }

    /** Whether it lowers the pH. */
    public boolean isAcid() {
        return pKas.length > 0;
    }

    /** Weight of one mole of the pure chemical (g/mol). */
    public double gramsPerMol() {
        return molarMass;
    }

    /**
     * What an amount does to the alkalinity of a volume, mg/L as CaCO3; below zero for an acid.
     *
     * @param pureG pure chemical (g)
     * @param volumeL water (L, above 0)
     * @param ph about which the water is afterwards (4 to 11)
     */
    public double alkalinityMgL(double pureG, double volumeL, double ph) {
        return pureG / molarMass * equivalentsPerMol(ph) * CACO3_EQ * 1000 / volumeL;
    }

    /** Inorganic carbon that one mole brings (mol). */
    double carbonPerMol() {
        return carbon;
    }

    /** Change of alkalinity by one mole at a final pH (eq), below zero for an acid. */
    double equivalentsPerMol(double ph) {
        if (!isAcid()) {
            return baseEq;
        }
        double term = 1;
        double sum = 1;
        double charge = 0;
        for (int i = 0; i < pKas.length; i++) {
            term *= StrictMath.pow(10, ph - pKas[i]);
            sum += term;
            charge += (i + 1) * term;
        }
        return -charge / sum;
    }
}
