package bywash.rules.recovery;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class AmmoniaLevelTest {
    @Test
    @DisplayName("1.0 mg/L at 24 Cel and pH 8 has 0.0502 mg/L un-ionised (IFAS FA-16, worked example)")
    void judgesTheWorkedExample() {
        AmmoniaLevel level = AmmoniaLevel.at(1.0, 8.0, 24);
        assertEquals(0.0502, level.unionisedMgL(), 0.0005);
        assertTrue(level.toxic());
        assertTrue(level.passed().get(0).contains("FA-16"));
    }

    @Test
    void theSameAmmoniaIsHarmlessAtALowerPh() {
        assertFalse(AmmoniaLevel.at(1.0, 6.8, 24).toxic());
    }

    @Test
    @DisplayName("pH 7, 20 Cel: EPA 2013 names the criterion that is passed, chronic then acute")
    void namesTheCriterion() {
        AmmoniaLevel chronic = AmmoniaLevel.at(8, 7, 20);
        assertTrue(
                chronic.passed().stream().anyMatch(p -> p.contains("chronic")),
                chronic.passed().toString());
        AmmoniaLevel acute = AmmoniaLevel.at(60, 7, 20);
        assertTrue(
                acute.passed().stream().anyMatch(p -> p.contains("acute")),
                acute.passed().toString());
    }

    @Test
    void assumesTheToxicSideWhereNothingIsKnownAndSaysSo() {
        AmmoniaLevel level = AmmoniaLevel.at(1.0, Double.NaN, Double.NaN);
        assertTrue(level.toxic());
        assertTrue(level.basis().contains("assumed on the safe side"));
    }
}
