package bywash.tui.command.calc;

import bywash.rules.text.Names;
import bywash.rules.water.LabelStrength;
import org.jspecify.annotations.Nullable;

/** Cautions that stand under every dose. */
final class Cautions {
    static final String TEST = "an estimate is no test: confirm chlorine with a DPD kit before fish depend on it";
    static final String LICENCE = "fish welfare, food safety and discharge follow local rules and licensed practice";
    private static final String LABEL = "arithmetic on the label strength: follow the label";
    private static final String HANDS = "wear gloves and eye protection; never mix chemicals";
    private static final String ACID = "add acid to water, never water to acid; dilute before it meets fish or roots";
    private static final String BASE = "dissolve the base in water first and add it slowly, away from fish and roots";

    private Cautions() {}

    /** Says which strength was taken where none was given. */
    static void strength(Answer answer, @Nullable String given, String reagent) {
        if (given == null) {
            answer.remark("No --strength was given: " + LabelStrength.words(LabelStrength.usualPercent(reagent))
                    + " by weight was taken, as " + Names.words(reagent) + " is usually sold; the label decides.");
        }
    }

    /** Cautions of a dose that takes chlorine out. */
    static Answer dechlorination(Answer answer) {
        return answer.caution(LABEL).caution(HANDS).caution(TEST).caution(LICENCE);
    }

    /** Cautions of a dose of acid or base. */
    static Answer ph(Answer answer, boolean acid) {
        return answer.caution(LABEL).caution(HANDS).caution(acid ? ACID : BASE).caution(LICENCE);
    }

    /** Cautions of salting. */
    static Answer salt(Answer answer) {
        return answer.caution(LABEL)
                .caution("salt harms many plants and cannot be taken out but by exchanging water")
                .caution(LICENCE);
    }
}
