package bywash.rules.recovery;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
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
        AmmoniaLevel assumed = AmmoniaLevel.at(1.0, 8.0, 28);
        assertEquals(assumed.unionisedMgL(), level.unionisedMgL(), 0);
        assertEquals(
                assumed.unionisedMgL(), AmmoniaLevel.at(1.0, 8.0, Double.NaN).unionisedMgL(), 0);
        assertTrue(AmmoniaLevel.at(1.0, 8.0, Double.NaN).basis().contains("assumed"), "one of the two is not known");
        assertFalse(assumed.basis().contains("assumed"), "all of it was known");
    }

    @Test
    void beyondTheRangeOfTheCriteriaTheirNearerEndCounts() {
        AmmoniaLevel hot = AmmoniaLevel.at(1, 9.6, 36);
        AmmoniaLevel hotEnd = AmmoniaLevel.at(1, 9, 30);
        assertEquals(hotEnd.acuteMgL(), hot.acuteMgL(), 0);
        assertEquals(hotEnd.chronicMgL(), hot.chronicMgL(), 0);
        AmmoniaLevel sour = AmmoniaLevel.at(1, 5.2, 4);
        assertEquals(AmmoniaLevel.at(1, 6.5, 4).acuteMgL(), sour.acuteMgL(), 0);
        assertEquals(AmmoniaLevel.at(1, 6.5, 4).chronicMgL(), sour.chronicMgL(), 0);
    }

    @Test
    void beyondTheRangeOfItsFormulaTheNearerEndCounts() {
        assertEquals(AmmoniaLevel.at(1, 11, 40), AmmoniaLevel.at(1, 12.5, 44));
        assertEquals(AmmoniaLevel.at(1, 4, 0), AmmoniaLevel.at(1, 3.1, -0.4));
        assertEquals(4.3, AmmoniaLevel.at(1, 4.3, 0.4).ph());
        assertEquals(0.4, AmmoniaLevel.at(1, 4.3, 0.4).temperatureC());
    }

    @Test
    void anAmmoniaThatCannotBeIsRefused() {
        assertEquals(1000, AmmoniaLevel.at(1000, 7, 20).tanMgL());
        assertEquals(0, AmmoniaLevel.at(0, 7, 20).tanMgL());
        for (double bad : new double[] {-0.01, 1000.01, Double.NaN}) {
            assertThrows(IllegalArgumentException.class, () -> AmmoniaLevel.at(bad, 7, 20));
        }
    }
}
