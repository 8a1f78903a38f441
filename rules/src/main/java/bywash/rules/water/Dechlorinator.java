package bywash.rules.water;

import static bywash.rules.water.AtomicWeight.C;
import static bywash.rules.water.AtomicWeight.CACO3_EQ;
import static bywash.rules.water.AtomicWeight.CL2;
import static bywash.rules.water.AtomicWeight.H;
import static bywash.rules.water.AtomicWeight.NA;
import static bywash.rules.water.AtomicWeight.O;
import static bywash.rules.water.AtomicWeight.O2;
import static bywash.rules.water.AtomicWeight.S;

/**
 * Chemicals that remove chlorine, with the mass each needs and what an excess of it does.
 *
 * <p>Thiosulfate is planned at one mole a mole of chlorine (to sulfur and sulfate), the safe case near pH 7; its reaction to
 * sulfate alone would need a quarter of that.
 *
 * <p>Source: stoichiometry of the written reaction with IUPAC abridged atomic weights; AWWA field guide Disinfection of Pipelines
 * and Storage Facilities, table 7-2, gives field doses within 12 % of it (sulfites carry about 10 % more). Accuracy: 0.1 % of
 * the stoichiometry for a pure chemical.
 */
public enum Dechlorinator {
    THIOSULFATE("sodium-thiosulfate", 2 * NA + 2 * S + 3 * O, 1, 1, 2),
    THIOSULFATE_PENTAHYDRATE("sodium-thiosulfate-pentahydrate", 2 * NA + 2 * S + 8 * O + 10 * H, 1, 1, 2),
    SULFITE("sodium-sulfite", 2 * NA + S + 3 * O, 1, 1, 0.5),
    BISULFITE("sodium-bisulfite", NA + H + S + 3 * O, 1, 2, 0.5),
    METABISULFITE("sodium-metabisulfite", 2 * NA + 2 * S + 5 * O, 0.5, 2, 1),
    ASCORBIC_ACID("ascorbic-acid", 6 * C + 8 * H + 6 * O, 1, 1, 0.5),
    SODIUM_ASCORBATE("sodium-ascorbate", 6 * C + 7 * H + NA + 6 * O, 1, 0, 0.5);

    private final String word;
    private final double molarMass;
    private final double molPerMolCl2;
    private final double acidEqPerMolCl2;
    private final double molOxygenPerMol;

    Dechlorinator(String word, double molarMass, double molPerMolCl2, double acidEqPerMolCl2, double molOxygenPerMol) {
        this.word = word;
        this.molarMass = molarMass;
        this.molPerMolCl2 = molPerMolCl2;
        this.acidEqPerMolCl2 = acidEqPerMolCl2;
        this.molOxygenPerMol = molOxygenPerMol;
    }

    /** The name on the label, with hyphens. */
    public String word() {
        return word;
    }

    /** Pure chemical that removes one part of chlorine (mg per mg Cl2). */
    public double mgPerMgCl2() {
        return molarMass * molPerMolCl2 / CL2;
    }

    /** Alkalinity used with one part of chlorine (mg CaCO3 per mg Cl2), from the acid the reaction makes. */
    public double alkalinityPerMgCl2() {
        return acidEqPerMolCl2 * CACO3_EQ / CL2;
    }

    /** Oxygen that one part of excess can take from the water once it is used up (mg O2 per mg). */
    public double oxygenPerMgExcess() {
        return molOxygenPerMol * O2 / molarMass;
    }
}
