package bywash.rules.water;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.husbandry.bacteria.AmmoniaSource;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

final class LabelStrengthTest {
    @Test
    void theUsualStrengthOfEveryReagentCanStandOnItsLabel() {
        Stream.of(
                        Stream.of(PhReagent.values()).map(PhReagent::word),
                        Stream.of(Dechlorinator.values()).map(Dechlorinator::word),
                        Stream.of(AmmoniaSource.values()).map(AmmoniaSource::word))
                .flatMap(words -> words)
                .forEach(w -> assertEquals("", LabelStrength.problem(w, LabelStrength.usualPercent(w)), w));
    }

    @Test
    void whatNoLabelCarriesIsSaidWithWhatWouldBeRight() {
        for (double bad : new double[] {0, -1, 38.5, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertTrue(
                    LabelStrength.problem("hydrochloric-acid", bad)
                            .endsWith(
                                    "is not one of hydrochloric acid; give the percent by weight on the label, above 0 to 38"),
                    String.valueOf(bad));
        }
        assertEquals(9.5, LabelStrength.percent("ammonia-solution", Double.NaN));
        assertEquals(25, LabelStrength.percent("ammonia-solution", 25));
    }

    /** 84.007 g of NaHCO3 hold one equivalent, 50.04 g as CaCO3 (IUPAC weights); the same in any stoichiometry table. */
    @Test
    void alkalinityFollowsTheEquivalents() {
        assertEquals(50.04, PhReagent.SODIUM_BICARBONATE.alkalinityMgL(84.007, 1000, 7), 0.01);
        assertEquals(-50.04, PhReagent.HYDROCHLORIC_ACID.alkalinityMgL(36.46, 1000, 7), 0.02);
    }
}
